/* What a job has to know beside its answers: builder/walk/spec_ranges, where and to_fill, in the page.
 *
 * In: the tables, the state, the row of a step. Out: `baytreeSpecs`: what is good of a spec on this
 * vehicle, where a step works, and what is still to be filled in.
 */
"use strict";
globalThis.baytreeSpecs = (() => {
  const { top, tableOf, rowOf, fillIn, named, itemsOf, unique } = baytreeTold;
  const LOWEST = ["-Infinity", 0], HIGHEST = ["Infinity", 1], NEVER = [HIGHEST, LOWEST];
  const vehicleOf = (tables, state) => tables.shop.vehicles[state.vehicle];

  // Specs

  // The row of a check with units, spans and ranges of the specs that it names.
  function withRanges(tables, state, row) {
    if (!row.specs) return row;
    const goods = goodRanges(tables, state, row), names = specNames(state, row);
    const readings = row.readings.map((reading) => {
      const spec = tables.shop.specs[names[reading.name]];
      return spec ? { ...reading, unit: spec.unit, low: spec.low, high: spec.high } : reading;
    });
    const results = row.results.map((result) => ({ ...result, ranges: { ...result.ranges,
      ...Object.fromEntries(Object.entries(result.places || {}).filter(([name]) => name in names)
        .map(([name, word]) => [name, rangeOf(word, goods[name])])) } }));
    return { ...row, readings, results };
  }

  const specNames = (state, row) => Object.fromEntries(Object.entries(row.specs || {})
    .map(([name, spec]) => [name, fillIn(spec, top(state).filled)]));

  // The good range of each reading, where it's known.
  function goodRanges(tables, state, row) {
    const load = fillIn((row.needs || []).map(([, , value]) => value).find(Boolean) || "", top(state).filled);
    return Object.fromEntries(Object.entries(specNames(state, row)).map(([name, spec]) => {
      const good = goodOf(tables, state, spec), byLoad = good.ranges || {};
      return [name, byLoad[load] || byLoad[""] || lookedUp(state, spec, good)];
    }).filter(([, cuts]) => cuts));
  }

  const goodOf = (tables, state, spec) => (
    vehicleOf(tables, state)?.specs?.[spec] || tables.shop.specs[spec]?.good || {});

  function lookedUp(state, spec, { look_up = [] }) {
    const typed = state.filled[`spec ${spec}`];
    if (!typed || !look_up.length) return null;
    const limits = Object.fromEntries(look_up.map((name, at) => [name, [typed].flat()[at]]));
    return [limits.from ? [limits.from, 0] : LOWEST, limits.to ? [limits.to, 1] : HIGHEST];
  }

  function rangeOf(word, good) {
    if (!good || word === "none") return NEVER;
    if (word === "below spec") return [LOWEST, good[0]];
    return word === "above spec" ? [good[1], HIGHEST] : good;
  }

  // Places

  function whereRows(tables, state, row) {
    const { filled } = top(state), where = row.where || {}, vehicle = vehicleOf(tables, state);
    const connector = vehicle?.connectors?.[where.connector];
    return [
      ...(where.phrase ? [{ phrase: fillIn(where.phrase, named(tables, top(state))) }] : []),
      ...(connector ? pinRows(where.connector, connector, (where.pins || []).map((pin) => fillIn(pin, filled)))
        : []),
      ...namesOfPlaces(state, row).flatMap((name) => {
        const known = knownPlaces(vehicle, name);
        return known.length ? known : [{ name, noted: state.filled[name] || "" }];
      }),
    ];
  }

  // The pins and fuses that a step names by their part: `pin abs-module: power`.
  function namesOfPlaces(state, { where = {} }) {
    const fill = (text = "") => fillIn(text, top(state).filled), part = fill(where.part);
    const pins = part ? (where.pins || []).map((role) => `pin ${part}: ${fill(role)}`) : [];
    return [...pins, ...("fuse" in where ? [`fuse ${fill(where.fuse)}`] : [])];
  }

  const NAME = /^(\S+) (.*?)(?:: (.*))?$/, partsOfName = (name) => NAME.exec(name).slice(1);

  // The name of a pin or a fuse as people say it: `ABS module: power pin`.
  function wordsOfPlace(tables, name) {
    const [kind, part, role = ""] = partsOfName(name);
    return `${tables.shop.parts[part] ?? part}: ${[role, kind].filter(Boolean).join(" ")}`;
  }

  // What the vehicle's file has; of a part that it has, a role may have no pin.
  function knownPlaces(vehicle, name) {
    const [kind, part, role = ""] = partsOfName(name);
    const connectors = Object.entries(vehicle?.connectors || {}).filter(([, one]) => one.of === part);
    if (!connectors.length) return [];
    if (kind === "fuse") {
      const powers = connectors.flatMap(([, { pins }]) => Object.values(pins))
        .filter((pin) => pin.role === "power" && pin.fuse);
      return unique(powers.map((pin) => pin.fuse)).map((fuse) => ({ fuse, ...vehicle.fuses?.[fuse] }));
    }
    const rows = connectors.flatMap(([id, connector]) => pinRows(id, connector,
      Object.keys(connector.pins).filter((number) => connector.pins[number].role === role)));
    return rows.length ? rows : [{ name, noted: "none on this vehicle" }];
  }

  const pinRows = (id, { where = "", pins }, numbers) => numbers.filter((number) => number in pins)
    .map((pin) => ({ connector: id, where, pin, ...pins[pin] }));

  // What is to be filled in

  // [] once the step can be shown.
  function asksAt(tables, state) {
    if (!state.frames.length || (state.end && state.end.kind !== "fix")) return [];
    const frame = top(state), row = rowOf(tables, frame);
    const asks = Object.entries(tableOf(tables, frame.inside).asks || {})
      .filter(([name]) => !Object.hasOwn(frame.filled, name))
      .map(([name, { ask, one_of, codes }]) => ({ name, ask: ask || name, one_of, ...(codes && ofCodes(codes, state)) }));
    if (asks.length) return asks;
    const plain = (name) => ({ name, ask: name, one_of: [] });
    return [
      ...(row.each && !itemsOf(tables, state, row) ? [{ ...plain(row.each[1]), list: true }] : []),
      ...specAsks(tables, state, row),
      ...namesOfPlaces(state, row).filter((name) => !Object.hasOwn(state.filled, name)
        && !knownPlaces(vehicleOf(tables, state), name).length).map((name) => ({ ...plain(name), ask: wordsOfPlace(tables, name) })),
    ];
  }

  // DTCs

  const DTC = /\b([PCBU][0-3][0-9A-F]{3})(?:[-:]?([0-9A-F]{2}))?\b/g;

  // The answers that the DTCs in a text stand for.
  function answersOfCodes(codes, text) {
    const found = [...text.toUpperCase().matchAll(DTC)].map(([, code, kind]) => codes[`${code}-${kind}`] || codes[code]);
    return unique(found.filter(Boolean));
  }

  function ofCodes(codes, { complaint, steps }) {
    const texts = steps.flatMap(({ seen, wrote }) => [seen, ...Object.values(wrote)]);
    const offered = answersOfCodes(codes, [complaint, ...texts].join(" "));
    return { codes, ...(offered.length && { offered }) };
  }

  function specAsks(tables, state, row) {
    const known = goodRanges(tables, state, row);
    return Object.entries(specNames(state, row)).flatMap(([reading, name]) => {
      const limits = goodOf(tables, state, name).look_up || [], spec = tables.shop.specs[name];
      return reading in known || !limits.length || !spec ? [] : [{ name: `spec ${name}`, ask: spec.text,
        one_of: [], list: limits.length > 1, limits, unit: spec.unit }];
    });
  }

  return { withRanges, goodRanges, whereRows, wordsOfPlace, asksAt, answersOfCodes, DTC };
})();
