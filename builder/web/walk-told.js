/* What is told at the step of a walk: builder/walk/told and list_items, in the page.
 *
 * In: the tables, the state. Out: `baytreeTold`: the changes at the vehicle, the lines to do, the
 * cautions, the items of a list.
 */
"use strict";
globalThis.baytreeTold = (() => {
  const { Vehicle, stateOf, words, unique } = baytreeVehicle;
  const { changes, backToNormal } = baytreeChanges;
  const SEVERITY = ["DANGER", "WARNING", "CAUTION", "NOTICE"];
  const TO_ACKNOWLEDGE = SEVERITY.slice(0, 2);
  const top = (state) => state.frames[state.frames.length - 1];
  const placeOf = (frame) => `${frame.inside}#${frame.step}`;
  // The two parts of a place; the name of a tree may hold the sign too.
  const partsOfPlace = (place) => place.split(/#(?=[^#]*$)/);
  const withTop = (state, change) => (
    { ...state, frames: [...state.frames.slice(0, -1), { ...top(state), ...change }] });

  // A tree, or a procedure as `procedures/<name>`.
  const tableOf = (tables, inside) => (inside.startsWith("procedures/")
    ? tables.shop.procedures[inside.slice("procedures/".length)] : tables.trees[inside]);
  const vehicleOf = (tables) => (tables.vehicle ||= new Vehicle(tables.shop.conditions));
  const isOver = (state) => Boolean(state.end)
    && (state.end.kind !== "fix" || state.end.verified !== null);
  // The steps before the repair in which a walk ended; all where it isn't done yet.
  function stepsBeforeRepair({ end, verifying, steps }) {
    if (!end || (verifying === null && end.verified === null)) return steps;
    const done = steps.findLastIndex(({ inside, step, kind }) => kind === "fix" && step === end.step && inside === end.inside);
    return done < 0 ? steps : steps.slice(0, done);
  }
  // At a fix that isn't done yet.
  const isRepairing = (state) => state.end?.kind === "fix" && !isOver(state) && state.verifying === null;
  // At a test in words after a repair, and not in a check that verifies.
  const judgesInWords = (state) => state.verifying !== null && !state.frames.some((one) => one.verifies);

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

  /* What changes at the step: `before` back to normal, `first`, `after` the lines, and of a fix `back`
   * to normal once it is done; `put_back` in words, with `back` or else with `before`. `states` hold
   * then, `left` once the step is left. */
  function planOf(tables, state) {
    const vehicle = vehicleOf(tables), frame = top(state);
    if (state.end?.kind === "unsafe") return planned({ before: [], states: state.now, put_back: [] }); // nobody goes back to it
    if (isOver(state) || judgesInWords(state)) {
      const [before, states] = backToNormal(vehicle, state.now);
      return planned({ before, states, put_back: state.put_back });
    }
    const row = rowOf(tables, frame), needs = needed(row, frame);
    const [before, normal] = normalBefore(vehicle, state, needs);
    const [hooked, then] = row.hook_up ? changes(vehicle, normal, forHookUp(vehicle, row.hook_up, needs)) : [[], normal];
    const [last, states] = changes(vehicle, then, needs);
    const [first, after] = row.hook_up ? [hooked, last] : [last, []];
    if (!isRepairing(state)) {
      return planned({ before, first, after, states, put_back: beginsTest(state) ? state.put_back : [] });
    }
    const [back, left] = backToNormal(vehicle, states);
    return planned({ before, first, after, states, back, left, put_back: unique([...state.put_back, ...ownPutBack(tables, frame)]) });
  }

  function planned({ before, first = [], after = [], back = [], states, left = states, put_back }) {
    return { before, first, after, back, states, left, put_back, every: [...before, ...first, ...after, ...back] };
  }

  // A test keeps what holds and what it needs; nothing where something is put back in words.
  function normalBefore(vehicle, state, needs) {
    if (!state.to_normal) return [[], state.now];
    const isTest = state.verifying !== null && !state.put_back.length;
    const held = isTest ? state.now.filter((one) => needs.includes(one)) : [], kept = vehicle.canStay(held) ? held : [];
    const [before, now] = backToNormal(vehicle, state.now, kept);
    if (!changes(vehicle, now, needs)[0].some(({ left }) => left && vehicle.isPower(left))) return [before, now];
    // What else is needed turns the key off again, so nobody starts the engine in between.
    return backToNormal(vehicle, state.now, kept.filter((one) => !vehicle.isPower(one)));
  }

  // Whether a test after the repair begins at this step.
  const beginsTest = (state) => state.to_normal && state.verifying !== null;

  // What a step takes apart that no state covers.
  function ownPutBack(tables, frame) {
    const { put_back } = rowOf(tables, frame);
    return put_back ? [fillIn(put_back, named(tables, frame))] : [];
  }

  const needed = (row, frame) => (row.needs || []).map(([condition, ...rest]) => stateOf(
    condition, ...rest.map((text) => fillIn(text, frame.filled))));

  // What is needed already while something is hooked up, that state last.
  function forHookUp(vehicle, state, needs) {
    const own = stateOf(state), place = vehicle.place(own);
    return [...needs.filter((one) => vehicle.place(one) !== place && !vehicle.excludes(one, own)), own];
  }

  // The lines to do, each with what it belongs to, and the states that hold once it is ticked.
  function linesOf(tables, state, plan) {
    const row = rowOf(tables, top(state)), names = tables.shop.parts, filled = named(tables, top(state));
    const lines = (of, texts, states = null) => texts.map((text) => ({ of, text, states }));
    const changed = (of, made, states) => lines(of, made.flatMap(({ told }) => told.map((line) => words(line, names))), states);
    const own = isOver(state) || judgesInWords(state) ? [] : row.do || [];
    // The engine and the key off, what a step took apart, then the rest: the battery after the connectors.
    const vehicle = vehicleOf(tables), isLast = isRepairing(state);
    const isOn = ({ left }) => left && vehicle.isPower(left) && !vehicle.of(left).normal && vehicle.of(left).counts_as !== "power off";
    const putBack = (made, states, told) => {
      const off = made.findIndex(isOn) + 1;
      return [...changed("put back", made.slice(0, off), states), ...lines("put back", told), ...changed("put back", made.slice(off), states)];
    };
    return [
      ...putBack(plan.before, plan.states, isLast ? [] : plan.put_back),
      ...changed("change", plan.first, plan.states),
      ...lines("do", own.map((text) => fillIn(text, filled))),
      ...changed("after", plan.after, plan.states),
      ...putBack(plan.back, plan.left, isLast ? plan.put_back : []),
    ];
  }

  // What fills the placeholders of a frame as it is shown: parts by name, not by ID.
  const named = (tables, { filled }) => Object.fromEntries(
    Object.entries(filled).map(([name, value]) => [name, tables.shop.parts[value] ?? value]));

  // The states of the vehicle as they are: changed if a line to change it is ticked.
  function physicalStates(tables, state) {
    if (!state.ticked.length || !state.frames.length) return state.now;
    const lines = linesOf(tables, state, planOf(tables, state));
    const ticked = [...state.ticked].sort((one, other) => one - other).map((line) => lines[line]?.states);
    return ticked.filter(Boolean).pop() || state.now;
  }

  // Cautions

  // Those of the changes, of the states that hold and of the step itself, most severe first.
  function hazardsAt(tables, state, plan) {
    const { hazards } = tables.shop;
    const ids = unique([
      ...plan.every.flatMap((change) => change.hazards),
      ...plan.states.flatMap((one) => vehicleOf(tables).of(one).hazards || []),
      ...(judgesInWords(state) ? [] : rowOf(tables, top(state)).hazards || []),
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

  return { top, placeOf, partsOfPlace, withTop, tableOf, rowOf, isOver, stepsBeforeRepair, isRepairing, judgesInWords, fillIn, named, ownPutBack, beginsTest, planOf, linesOf,
    physicalStates, hazardsAt, inFull, unread, itemsOf, withItem, unique,
    runKey, provedElsewhere };
})();
