/* The reducer of a walk: builder/walk/reduce, forward and at_step, in the page.
 *
 * In: the tables, a state, an event as a record has it. Out: `baytreeReduce`: the next state, or
 * `{ refused }` with the reason; nothing changes then. An answer that is corrected needs
 * walk-correct.js, what is filled in walk-fill.js. Python is the reference; random walks hold both
 * to the same screens, refusals and records.
 */
"use strict";
globalThis.baytreeReduce = (() => {
  const { top, placeOf, rowOf, isRepairing, judgesInWords, ownPutBack, beginsTest, planOf,
    linesOf, physicalStates, hazardsAt, unique, runKey } = baytreeTold;
  const { withRanges } = baytreeSpecs;
  const { unfit } = baytreeUnfit;
  const { frameOf, recorded, arrived, comeTo, stuck, withResult, cannotTest, leave, verifyNext,
    intoProcedure, judgeTest } = baytreeTargets;
  const { answered } = baytreeAnswers;
  const BEGINNING = Object.freeze({
    tree: "", revision: "", vehicle: "", complaint: "", frames: [], left: [], filled: {}, sources: {},
    now: [], to_normal: false, known: [], read: [], ticked: [], verifying: null, put_back: [],
    proved: {}, passed: [], paused: "", end: null, write_up: {}, steps: [], struck: [], acknowledged: [], since: "",
    worked: 0, done: [], events: [], before: null });
  const refuse = (refused) => ({ refused });
  const same = (one, other) => JSON.stringify(one) === JSON.stringify(other);

  // Forward: everything but `back` and `correct`

  const FORWARD = { start, tick, acknowledge, pause: interrupt, hand_over: interrupt, resume, rejoin,
    fill: (...all) => baytreeFill.fill(...all), answer, done, write_up: writeUp, cannot_test: cannotTestHere, none_of_these: noneOfThese, run, take, verify };

  function forward(tables, state, event) {
    const reason = unfit(tables, state, event);
    return reason ? refuse(reason) : FORWARD[event.event](tables, state, event);
  }

  function start(tables, state, { tree, vehicle = "", complaint = "", enter = "", proven = {}, at = "" }) {
    const table = tables.trees[tree];
    const steps = Object.entries(proven).map(([step, result]) => recorded(
      tree, step, table.steps[step].kind, result, { stated: true }));
    const begun = { ...state, tree, revision: table.revision, vehicle, complaint,
      frames: [frameOf(tree)], steps, since: at };
    return comeTo(tables, begun, enter || table.start);
  }

  function tick(tables, state, { line, on = true }) {
    const count = linesOf(tables, state, planOf(tables, state)).length;
    if (!(line >= 0 && line < count)) return refuse(`there is no line ${line}: this step has ${count}, from 0`);
    const others = state.ticked.filter((one) => one !== line);
    return { ...state, ticked: on ? [...others, line] : others };
  }

  function writeUp(tables, state, { name, text }) {
    const place = placeOf(state.end), own = { ...state.write_up[place], [name]: text };
    const written = Object.fromEntries(Object.entries(own).filter(([, words]) => words));
    return { ...state, write_up: { ...state.write_up, [place]: written } };
  }

  function acknowledge(tables, state, { hazards, who = "", at = "" }) {
    const there = hazardsAt(tables, state, planOf(tables, state)), place = placeOf(top(state));
    const wrong = hazards.find((one) => !there.includes(one));
    if (wrong !== undefined) return refuse(`\`${wrong}\` is no hazard of this step`);
    return { ...state, read: unique([...state.read, ...hazards]),
      acknowledged: [...state.acknowledged, ...hazards.map((hazard) => ({ hazard, place, who, at }))] };
  }

  function interrupt(tables, state, { event, at }) {
    return { ...state, paused: event, worked: state.worked + (secondsBetween(state.since, at) || 0) };
  }

  function resume(tables, state, { at = "" }) {
    return { ...state, paused: "", since: at, known: [], read: [] };
  }

  function rejoin(tables, state, { at }) {
    const [frame, ...left] = state.left;
    return arrived(tables, { ...moved(state, at), frames: [frame], left, end: null, to_normal: true, known: [], proved: {} });
  }

  // A step is left

  function answer(tables, state, event) {
    const row = withRanges(tables, state, rowOf(tables, top(state)));
    const given = answered(row, toolsOf(tables, row), event);
    if (given.refused) return given;
    const result = row.results[given.result];
    const entry = { ...entryOf(tables, state, event, result.text), means: result.means || "",
      readings: given.readings, too_close: given.too_close, stated: Boolean(event.stated),
      wrote: event.wrote || {} };
    const after = event.stated ? stated(tables, state, entry) : left(tables, state, entry);
    return leave(tables, after, result.text, result.to, result.answers);
  }

  // Records a step that was known before: nothing was done for it, but for what is ticked.
  function stated(tables, state, entry) {
    const now = physicalStates(tables, state);
    return { ...moved(state, entry.at), steps: [...state.steps, entry], now,
      to_normal: state.to_normal && JSON.stringify(now) === JSON.stringify(state.now) };
  }

  const toolsOf = (tables, row) => (row.tools || []).map((id) => tables.shop.tools[id]).filter(Boolean);

  function done(tables, state, event) {
    const row = rowOf(tables, top(state));
    const entry = { ...entryOf(tables, state, event, "done"), wrote: event.wrote || {} };
    const after = left(tables, state, entry);
    return row.kind === "fix" ? verifyNext(tables, after, 0) : leave(tables, after, "done", row.then || "");
  }

  function cannotTestHere(tables, state, event) {
    return cannotTest(tables, left(tables, state, entryOf(tables, state, event, "cannot test")));
  }

  function noneOfThese(tables, state, event) {
    return stuck(left(tables, state, entryOf(tables, state, event, "none of these")));
  }

  function run(tables, state, { at }) {
    return intoProcedure(tables, moved(state, at), rowOf(tables, top(state)));
  }

  function take(tables, state, { at }) {
    const [word, place] = state.proved[runKey(rowOf(tables, top(state)), top(state))];
    return withResult(tables, moved(state, at), word, place);
  }

  function verify(tables, state, { passed, at }) {
    return judgeTest(tables, moved(worked(tables, state), at), passed);
  }

  function entryOf(tables, state, { seen = "", at = "", who = "" }, result) {
    const frame = top(state), row = rowOf(tables, frame), seconds = secondsBetween(state.since, at);
    return recorded(frame.inside, frame.step, row.kind, result, {
      item: row.each ? frame.filled[row.each[0]] || "" : "", seen, at, who,
      minutes: seconds === null ? null : Math.floor((state.worked + seconds + 30) / 60),
      event: state.done.length });
  }

  // Records a step that was done, also where it couldn't be tested.
  function left(tables, state, entry) {
    return { ...moved(worked(tables, state), entry.at), steps: [...state.steps, entry] };
  }

  // The vehicle as the step leaves it; of a fix with all put back.
  function worked(tables, state) {
    const plan = planOf(tables, state), isPutBack = isRepairing(state) || judgesInWords(state);
    return { ...state, now: plan.left, to_normal: false,
      known: unique([...state.known, ...hazardsAt(tables, state, plan)]),
      put_back: unique([...(isPutBack || plan.put_back.length ? [] : state.put_back),
        ...(isPutBack ? [] : ownPutBack(tables, top(state)))]) };
  }

  const moved = (state, at = "") => ({ ...state, read: [], ticked: [], passed: [], since: at, worked: 0 });

  function secondsBetween(from, to) {
    return from && to ? Math.max(0, Math.trunc((Date.parse(to) - Date.parse(from)) / 1000)) : null;
  }

  // Events, one after another

  function reduce(tables, state, event) {
    if (event.event === "back") return undone(state, event);
    if (event.event === "correct") return baytreeCorrect.corrected(tables, state, event);
    const following = oneMore(tables, state, event);
    return following.refused ? following
      : { ...following, events: [...state.events, event], before: state };
  }

  function oneMore(tables, state, event) {
    const following = event.asIs ? asItIs(state, event.asIs) : forward(tables, state, event);
    return following.refused ? following : { ...following, done: [...state.done, event] };
  }

  // The vehicle stays as later steps left it, though they don't follow any more.
  function asItIs(state, { now, known, put_back, since }) {
    return { ...state, now, known, put_back: unique([...state.put_back, ...put_back]), since, worked: 0 };
  }

  // The state before the last event; what was measured since then is kept.
  function undone(state, event) {
    const { before } = state;
    if (!before) return refuse("there is nothing to undo");
    const kept = [...before.steps, ...before.struck];
    const lost = [...state.struck, ...state.steps].filter((one) =>
      (Object.keys(one.readings).length || Object.keys(one.wrote).length)
      && !kept.some((other) => same(one, other)));
    return { ...before, events: [...state.events, event], struck: [...before.struck, ...lost] };
  }

  // The state after all events, or the first refusal, with the number of its event.
  function replay(tables, events) {
    let state = BEGINNING;
    for (const [at, event] of events.entries()) {
      const following = reduce(tables, state, event);
      if (following.refused) return { ...following, refused: `event ${at + 1}: ${following.refused}`, at, state };
      state = following;
    }
    return state;
  }

  return { BEGINNING, reduce, replay, oneMore, asItIs, same, toolsOf };
})();
