/* What a walk shows at its step, and its record: builder/walk/screen, record and fix_words, in the
 * page.
 *
 * In: the tables, a state. Out: `baytreeRecord`: maps as Python has them; what would be empty is
 * left out.
 */
"use strict";
globalThis.baytreeRecord = (() => {
  const { read, add, rounded } = baytreeExact;
  const { top, placeOf, partsOfPlace, tableOf, rowOf, isOver, stepsBeforeRepair, isRepairing, judgesInWords, fillIn, named, planOf, linesOf, hazardsAt, inFull, unread,
    itemsOf, provedElsewhere } = baytreeTold;
  const { asksAt, goodRanges, withRanges, whereRows } = baytreeSpecs;
  const { parts, lineOf, words: inWords } = baytreeVehicle;

  const DRIVE = ["yes", "with care", "no"];

  function withoutEmpty(map) {
    return Object.fromEntries(Object.entries(map).filter(([, value]) => value
      && (typeof value !== "object" || Object.keys(value).length > 0)));
  }

  // The screen

  function screen(tables, state) {
    if (!state.tree) return { phase: "start" };
    const frame = top(state), row = rowOf(tables, frame), asks = asksAt(tables, state);
    const where = { phase: phaseOf(state, asks), in: frame.inside, step: frame.step, kind: row.kind,
      inside: state.frames.map((one) => tableOf(tables, one.inside).title) };
    if (state.paused || where.phase === "fill") return { ...where, ...withoutEmpty({ asks }) };
    const plan = planOf(tables, state);
    return { ...where, ...withoutEmpty({
      ...words(tables, state, row), ...cautionAndLines(tables, state, plan), ...answers(tables, state, row),
      ...progress(tables, state, row), ...minutes(row, plan), ...end(tables, state, row) }) };
  }

  function phaseOf(state, asks) {
    if (state.paused) return "paused";
    if (asks.length) return "fill";
    if (judgesInWords(state)) return "verify";
    return isOver(state) ? "end" : "step";
  }

  function words(tables, state, row) {
    const filled = named(tables, top(state)), text = (line = "") => fillIn(line, filled), list = (texts = []) => texts.map(text);
    const torques = tables.shop.vehicles[state.vehicle]?.torques || {};
    return { text: text(row.text), note: text(row.note), when: list(row.when), write_down: list(row.write_down),
      at: whereRows(tables, state, row).map(withoutEmpty),
      torques: (row.torques || []).map((name) => ({ name, ...torques[name] })) };
  }

  function cautionAndLines(tables, state, plan) {
    const hazards = hazardsAt(tables, state, plan);
    return {
      lines: linesOf(tables, state, plan)
        .map(({ of, text }, line) => ({ text, of, ticked: state.ticked.includes(line) })),
      now: plan.states.map((held) => inWords(
        lineOf(tables.shop.conditions[parts(held)[0]].text || "", parts(held)), tables.shop.parts)).filter(Boolean),
      hazards: hazards.map((id) => ({ id, full: inFull(tables, state, id) })),
      unread: unread(tables, state, hazards),
    };
  }

  function answers(tables, state, row) {
    const filled = named(tables, top(state));
    const results = (row.results || []).map(({ text, means = "" }) => withoutEmpty(
      { text: fillIn(text, filled), means: fillIn(means, filled) }));
    const measured = { results, readings: readings(withRanges(tables, state, row)), look_up: row.look_up,
      ranges: goodRanges(tables, state, row) };
    if (!row.by) return measured;
    const [word, place] = provedElsewhere(state, row) || [];
    return { ...measured, procedure: tables.shop.procedures[row.by.procedure]?.title,
      earlier: word ? { word, step: place } : null };
  }

  function readings(row) {
    const all = row.readings || [];
    return [...(row.figure || []).map((name) => ({ name, unit: all[0].unit })),
      ...all.map(({ name, unit, phrases }) => (phrases ? { name, unit, phrases } : { name, unit }))];
  }

  function progress(tables, state, row) {
    const frame = top(state), items = itemsOf(tables, state, row);
    return {
      item: items ? items[frame.items[frame.step]] : "",
      visit: row.at_most ? [frame.counts[frame.step] ?? 1, row.at_most] : null,
      passed: state.passed.map((place) => {
        const [inside, step] = partsOfPlace(place);
        return tableOf(tables, inside).steps[step].text;
      }),
      verify: testOf(tables, state),
    };
  }

  // Which test after the repair it is, and what passes.
  function testOf(tables, { verifying: index, frames }) {
    if (index === null) return null;
    const tests = rowOf(tables, frames[0]).verify, { text = "", passes = [] } = tests[index];
    return { index, count: tests.length, text, passes };
  }

  // The minutes of the step and its changes.
  function minutes(row, plan) {
    const sum = (own, key) => plan.every.reduce((total, one) => add(total, one[key]), read(own || "0"));
    const digits = (value) => (value[0] ? rounded(value) : "");
    return { minutes: digits(sum(row.minutes, "minutes")), wait: digits(sum(row.wait, "wait")) };
  }

  function end(tables, state, row) {
    const drive = driveOf(tables, state);
    if (!state.end) return drive;
    const isFixed = state.end.kind === "fix" && isOver(state);
    return { ...drive, cause: quoting(tables, state, row.cause), tell: quoting(tables, state, row.tell),
      tests: isRepairing(state) ? testTexts(tables, state, row) : [],
      end: endRow(state.end), call: state.end.kind === "stuck" ? tables.shop.stuck : null,
      rejoin: isFixed && state.left.length ? placeOf(state.left[0]) : "" };
  }

  // The most severe of the trees entered holds, each until that tree's own end.
  function driveOf(tables, state) {
    const here = tableOf(tables, state.frames[0].inside), row = rowOf(tables, state.frames[0]);
    return [{ drive: row.drive || here.drive, why: row.why || here.why }, // only an end has words of its own
      ...state.left.map((frame) => tableOf(tables, frame.inside))]
      .filter(({ drive }) => DRIVE.includes(drive))
      .reduce((worst, { drive, why }) => (DRIVE.indexOf(drive) > DRIVE.indexOf(worst.drive)
        ? { drive, why } : worst), {});
  }

  // A text with the readings that it quotes, as last read before the repair: `<cable>`, `<slack.play>`.
  function quoting(tables, state, text = "") {
    const { inside } = state.frames[0], values = {};
    for (const entry of stepsBeforeRepair(state).filter((one) => one.inside === inside)) {
      for (const [name, { value, unit }] of Object.entries(entry.readings)) {
        values[name ? `${entry.step}.${name}` : entry.step] = `${value} ${unit}`.trim();
      }
    }
    return fillIn(text.replace(/<([^<>]+)>/g, (whole, name) => values[name] ?? whole),
      named(tables, state.frames[0]));
  }

  // In words what will verify a repair, one check or procedure after another.
  function testTexts(tables, state, row) {
    const { inside } = top(state), filled = named(tables, top(state));
    return (row.verify || []).map(({ step, by, text }) => {
      if (step) return tableOf(tables, inside).steps[step].text;
      return by ? tables.shop.procedures[by.procedure]?.title ?? by.procedure : text;
    }).map((text) => fillIn(text, filled));
  }

  // The record

  const endRow = ({ inside, step, kind, verified }) => ({ in: inside, step, kind, verified });

  function recordOf(state) {
    const { tree, revision, vehicle, complaint, end: over } = state;
    return {
      tree, revision, vehicle, complaint, steps: state.steps.map(stepRow),
      end: over ? (over.kind === "stuck" ? "stuck" : over.step) : null,
      ended: over ? endRow(over) : null,
      hazards: state.acknowledged.map(({ hazard, place, who, at }) => {
        const [inside, step] = partsOfPlace(place);
        return { in: inside, step, hazard, who, at };
      }),
      filled: Object.fromEntries(Object.entries(state.filled).map(
        ([name, value]) => [name, { value, source: state.sources[name] || "" }])),
      ...withoutEmpty({ write_up: withoutEmpty(state.write_up) }),
      struck: state.struck.map(stepRow), events: state.events,
    };
  }

  function stepRow({ inside, step, result, readings: typed, stated, at, minutes: spent, ...more }) {
    const { kind, means, item, seen, earlier, wrote, who, too_close } = more;
    return { in: inside, step, result, readings: typed, stated, at: at || null, minutes: spent,
      ...withoutEmpty({ kind, means, item, seen, earlier, wrote, who, too_close }) };
  }

  return { screen, recordOf };
})();
