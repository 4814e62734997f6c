/* Where a walk goes when a step is left: builder/walk/targets, in the page.
 *
 * In: the tables, a state, a target. Out: `baytreeTargets`: the state at the new step, or
 * `{ refused }` where the table of another tree is missing.
 */
"use strict";
globalThis.baytreeTargets = (() => {
  const { top, placeOf, withTop, tableOf, rowOf, fillIn, itemsOf, withItem, runKey } = baytreeTold;
  const RETURN = "return: ";

  const frameOf = (inside, more = {}) => ({ inside, step: "", came_from: {}, counts: {}, items: {},
    filled: {}, failed: [], verifies: false, aside: false, waits: "", ...more });

  // A step that was answered or done, with all its keys in one order: two are compared as text.
  const recorded = (inside, step, kind, result, more = {}) => ({
    inside, step, kind, result, means: "", item: "", readings: {}, too_close: false, stated: false,
    seen: "", earlier: "", wrote: {}, at: "", who: "", minutes: null, event: -1, ...more });

  const endOf = (frame, kind) => ({ inside: frame.inside, step: frame.step, kind, verified: null });
  const stuck = (state) => ({ ...state, end: endOf(top(state), "stuck"), verifying: null });
  const outside = (state) => ({ ...state, frames: state.frames.slice(0, -1) });

  function go(tables, state, target, answers = {}) {
    const frame = top(state);
    if (target === "back") return comeTo(tables, state, frame.came_from[frame.step] || "", { isBack: true });
    if (target === "next") {
      const step = rowOf(tables, frame).list_step || "";
      return comeTo(tables, state, step, { item: (frame.items[step] || 0) + 1 });
    }
    if (target.startsWith(RETURN)) return comeOut(tables, state, target.slice(RETURN.length), true);
    return target.includes("/") ? handOff(tables, state, target, answers) : comeTo(tables, state, target);
  }

  function comeTo(tables, state, step, { isBack = false, item = 0 } = {}) {
    const frame = top(state), { steps } = tableOf(tables, frame.inside);
    if (!Object.hasOwn(steps, step)) return stuck(state);
    const row = steps[step];
    const came_from = isBack ? frame.came_from : { ...frame.came_from, [step]: frame.step };
    const here = withTop(state, { step, came_from });
    const items = itemsOf(tables, here, row), count = frame.counts[step] || 0;
    if ((row.at_most || count + 1) <= count || (items && item >= items.length)) return spent(tables, here, row);
    return arrived(tables, withItem(tables, withTop(here, {
      counts: { ...frame.counts, [step]: count + 1 },
      items: row.each ? { ...frame.items, [step]: item } : frame.items,
    })));
  }

  function spent(tables, state, row) {
    const place = placeOf(top(state));
    if (!("spent" in row) || state.passed.includes(place)) return stuck(state);
    return go(tables, { ...state, passed: [...state.passed, place] }, row.spent);
  }

  function arrived(tables, state) {
    const frame = top(state), row = rowOf(tables, frame);
    if (row.kind === "return") return comeOut(tables, state, row.word, false);
    if (row.kind === "fix") return { ...state, end: endOf(frame, "fix"), proved: {} };
    return row.kind === "stop" ? { ...state, end: endOf(frame, row.stop) } : state;
  }

  function handOff(tables, state, target, answers) {
    const [id, step] = target.split("#");
    if (!Object.hasOwn(tables.trees, id)) {
      return { refused: `the tree \`${id}\` isn't loaded: open it, then answer again`, load: id };
    }
    const filled = Object.fromEntries(Object.entries(answers)
      .map(([name, text]) => [name, fillIn(text, top(state).filled)]));
    const there = { ...state, frames: [frameOf(id, { filled })], left: [state.frames[0], ...state.left],
      to_normal: true, known: [], proved: {} };
    return comeTo(tables, there, step || tables.trees[id].start);
  }

  // Procedures

  function comeOut(tables, state, word, isProof) {
    const out = outside(state);
    if (top(state).verifies) return verified(tables, state, word);
    const frame = top(out), proof = [word, placeOf(frame)];
    const lasts = isProof && !tableOf(tables, top(state).inside).every_time;
    const proved = lasts ? { ...state.proved, [runKey(rowOf(tables, frame), frame)]: proof } : out.proved;
    return withResult(tables, { ...out, proved }, word);
  }

  function withResult(tables, state, word, earlier = "") {
    const frame = top(state), row = rowOf(tables, frame);
    const result = (row.results || []).find((one) => one.text === word);
    if (!result) return stuck(state);
    const entry = recorded(frame.inside, frame.step, row.kind, word,
      { means: result.means || "", earlier, at: state.since });
    return leave(tables, { ...state, steps: [...state.steps, entry] }, word, result.to);
  }

  function takesOf(by, frame) {
    return Object.entries(by.takes).map(([name, value]) => [name, fillIn(value, frame.filled)]);
  }

  function cannotTest(tables, state) {
    const frame = top(state), row = rowOf(tables, frame);
    if ("cannot_test" in row && !frame.verifies) return go(tables, state, row.cannot_test);
    return state.frames.length > 1 ? cannotRun(tables, state) : stuck(state);
  }

  // A procedure, or a check that verifies, can't be done.
  function cannotRun(tables, state) {
    if (top(state).verifies) return verified(tables, state, "");
    const out = outside(state), caller = top(out);
    const entry = recorded(caller.inside, caller.step, "check", "cannot test", { at: state.since });
    return cannotTest(tables, { ...out, steps: [...out.steps, entry] });
  }

  // Results, and the verification of a repair

  function leave(tables, state, result, target, answers) {
    const frame = top(state);
    if (frame.verifies && !frame.inside.startsWith("procedures/")) return verified(tables, state, result);
    return go(tables, state, target, answers);
  }

  function verifyNext(tables, state, index) {
    const tests = rowOf(tables, top(state)).verify || [];
    if (index >= tests.length) {
      return { ...state, verifying: null, to_normal: false, end: { ...state.end, verified: tests.length > 0 } };
    }
    const here = { ...state, verifying: index, to_normal: true }, test = tests[index];
    if ("step" in test) return comeToWaiting(tables, waiting(tables, here, test.step));
    return "by" in test ? intoProcedure(tables, here, test, true) : here;
  }

  // Puts a check on top, and on top of it the steps that come before it.
  function waiting(tables, state, step) {
    const { inside, filled } = top(state), first = tableOf(tables, inside).steps[step].after || [];
    const frame = frameOf(inside, { verifies: true, filled, waits: step });
    const before = [...first].reverse().map((waits) => ({ ...frame, waits, aside: true }));
    return { ...state, frames: [...state.frames, frame, ...before] };
  }

  const comeToWaiting = (tables, state) => (
    comeTo(tables, withTop(state, { waits: "" }), top(state).waits));

  function intoProcedure(tables, state, { by }, verifies = false) {
    const table = tables.shop.procedures[by.procedure];
    if (!table) return stuck(state);
    const filled = { ...table.defaults, ...Object.fromEntries(takesOf(by, top(state))) };
    const inside = { ...state, frames: [...state.frames, frameOf(table.id, { filled, verifies })] };
    if (Object.values(filled).some((value) => table.never_on?.includes(value))) return cannotRun(tables, inside);
    return comeTo(tables, inside, table.start);
  }

  // A check that verifies is over; of a step that only comes before it, any result does.
  function verified(tables, over, result) {
    const state = outside(over);
    if (top(over).aside) return comeToWaiting(tables, state);
    const test = rowOf(tables, top(state)).verify[state.verifying || 0];
    return judgeTest(tables, state, (test.passes || []).includes(result));
  }

  function judgeTest(tables, before, passed) {
    const frame = top(before), { verify, still_there } = rowOf(tables, frame);
    const index = before.verifying || 0, test = verify[index];
    const entry = recorded(frame.inside, frame.step, "verify", passed ? "passed" : "failed",
      { seen: test.text || test.step || test.by.procedure, at: before.since });
    const state = { ...before, steps: [...before.steps, entry] };
    if (passed) return verifyNext(tables, state, index + 1);
    const target = still_there || verify.find((one) => "step" in one)?.step || "";
    if (frame.failed.includes(frame.step) || !target) return stuck(state);
    const again = withTop({ ...state, end: null, verifying: null }, { failed: [...frame.failed, frame.step] });
    return go(tables, again, target);
  }

  return { frameOf, recorded, arrived, comeTo, stuck, withResult, cannotTest, leave, verifyNext,
    intoProcedure, judgeTest };
})();
