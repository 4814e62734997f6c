/* What is told at the step of a walk: builder/walk/told and list_items, in the page.
 *
 * In: the tables, the state. Out: `baytreeTold`: the changes at the vehicle, the lines to do, the
 * cautions, the items of a list.
 */
"use strict";
globalThis.baytreeTold = (() => {
  const { Vehicle, stateOf } = baytreeVehicle;
  const SEVERITY = ["DANGER", "WARNING", "CAUTION", "NOTICE"];
  const TO_ACKNOWLEDGE = SEVERITY.slice(0, 2);
  const unique = (list) => [...new Set(list)];
  const top = (state) => state.frames[state.frames.length - 1];
  const placeOf = (frame) => `${frame.inside}#${frame.step}`;
  // The two parts of a place; the name of a tree may hold the sign too.
  const partsOfPlace = (place) => [place.slice(0, place.lastIndexOf("#")), place.slice(place.lastIndexOf("#") + 1)];
  const withTop = (state, change) => (
    { ...state, frames: [...state.frames.slice(0, -1), { ...top(state), ...change }] });

  // A tree, or a procedure as `procedures/<name>`.
  const tableOf = (tables, inside) => (inside.startsWith("procedures/")
    ? tables.shop.procedures[inside.slice("procedures/".length)] : tables.trees[inside]);
  const vehicleOf = (tables) => (tables.vehicle ||= new Vehicle(tables.shop.conditions));
  const isOver = (state) => Boolean(state.end)
    && (state.end.kind !== "fix" || state.end.verified !== null);

  function fillIn(text, filled) {
    for (const [name, value] of Object.entries(filled)) text = text.replaceAll(`<${name}>`, () => value);
    return text;
  }

  // The step where a frame is; a fix with how its module is fitted.
  function rowOf(tables, frame) {
    const row = tableOf(tables, frame.inside).steps[frame.step];
    const fit = row.replaces && tables.shop.modules[fillIn(row.replaces, frame.filled)];
    if (!fit) return row;
    const both = (key) => [...(row[key] || []), ...(fit[key] || [])], place = (state) => vehicleOf(tables).place(stateOf(...state));
    const places = (row.needs || []).map(place);
    const more = { needs: [...(row.needs || []), ...(fit.needs || []).filter((one) => !places.includes(place(one)))], do: [...(fit.do || []), ...(row.do || [])],
      when: both("when"), hazards: both("hazards"), torques: unique(both("torques")) };
    return { ...row, ...Object.fromEntries(Object.entries(more).filter(([, list]) => list.length)) };
  }

  // The procedure of a check with what fills it, as one text.
  function runKey(row, frame) {
    const sorted = Object.entries(row.by.takes).sort(([one], [other]) => (one < other ? -1 : 1));
    return [row.by.procedure, ...sorted.map(([name, value]) => `${name}=${fillIn(value, frame.filled)}`)].join(" ");
  }

  // The word that the procedure of another check proved earlier, and that check; or null.
  function provedElsewhere(state, row) {
    const proof = state.proved[runKey(row, top(state))];
    return proof && proof[1] !== placeOf(top(state)) ? proof : null;
  }

  // Changes

  // What changes before the lines of a step and, where something is hooked up, after them.
  function planOf(tables, state) {
    const vehicle = vehicleOf(tables), frame = top(state), row = rowOf(tables, frame);
    let first = [], now = state.now;
    if (isOver(state) || state.to_normal) [first, now] = vehicle.backToNormal(now);
    if (isOver(state)) return { first, after: [], states: now };
    const needs = needed(row, frame);
    const [more, then] = vehicle.changes(now, row.hook_up ? forHookUp(vehicle, row.hook_up, needs) : needs);
    const [after, states] = row.hook_up ? vehicle.changes(then, needs) : [[], then];
    return { first: [...first, ...more], after, states };
  }

  const needed = (row, frame) => (row.needs || []).map(([condition, ...rest]) => stateOf(
    condition, ...rest.map((text) => fillIn(text, frame.filled))));

  // What is needed already while something is hooked up, that state last.
  function forHookUp(vehicle, state, needs) {
    const own = stateOf(state), place = vehicle.place(own);
    return [...needs.filter((one) => vehicle.place(one) !== place && !vehicle.excludes(one, own)), own];
  }

  // The lines to do, each with what it belongs to.
  function linesOf(tables, state, plan) {
    const row = rowOf(tables, top(state)), { filled } = top(state);
    const lines = (of, texts) => texts.map((text) => ({ of, text }));
    return [
      ...lines("change", plan.first.flatMap((change) => change.told)),
      ...lines("do", isOver(state) ? [] : (row.do || []).map((text) => fillIn(text, filled))),
      ...lines("after", plan.after.flatMap((change) => change.told)),
      ...lines("put back", state.end ? state.put_back : []),
    ];
  }

  // The states of the vehicle as they are: changed if a line to change it is ticked.
  function physicalStates(tables, state) {
    if (!state.ticked.length || !state.frames.length) return state.now;
    const plan = planOf(tables, state), lines = linesOf(tables, state, plan);
    return state.ticked.some((line) => ["change", "after"].includes(lines[line]?.of))
      ? plan.states : state.now;
  }

  // Cautions

  // Those of the changes, of the states that hold and of the step itself, most severe first.
  function hazardsAt(tables, state, plan) {
    const { hazards } = tables.shop;
    const ids = unique([
      ...[...plan.first, ...plan.after].flatMap((change) => change.hazards),
      ...plan.states.flatMap((one) => vehicleOf(tables).of(one).hazards || []),
      ...(rowOf(tables, top(state)).hazards || []),
    ]).filter((id) => Object.hasOwn(hazards, id));
    const rank = (id) => SEVERITY.indexOf(hazards[id].signal);
    return ids.sort((one, other) => rank(one) - rank(other));
  }

  const inFull = (tables, state, hazard) => tables.shop.hazards[hazard].signal === "DANGER"
    || !state.known.includes(hazard);

  const unread = (tables, state, hazards) => hazards.filter((one) =>
    TO_ACKNOWLEDGE.includes(tables.shop.hazards[one].signal)
    && inFull(tables, state, one) && !state.read.includes(one));

  // Lists

  // The items of the list that a step goes through; null if it has none, or none yet.
  function itemsOf(tables, state, row) {
    if (!row.each) return null;
    const name = row.each[1], vehicle = tables.shop.vehicles[state.vehicle];
    const items = [tableOf(tables, top(state).inside).lists?.[name], vehicle?.lists?.[name],
      state.filled[name]].find((list) => list?.length);
    return items || null;
  }

  function withItem(tables, state) {
    const frame = top(state), row = rowOf(tables, frame), items = itemsOf(tables, state, row);
    if (!items) return state;
    return withTop(state, { filled: { ...frame.filled, [row.each[0]]: items[frame.items[frame.step]] } });
  }

  return { top, placeOf, partsOfPlace, withTop, tableOf, rowOf, vehicleOf, isOver, fillIn, planOf, linesOf,
    physicalStates, hazardsAt, inFull, unread, itemsOf, withItem, unique,
    runKey, provedElsewhere };
})();
