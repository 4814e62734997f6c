/* Whether an event fits the walk as it is: builder/walk/unfit, in the page.
 *
 * In: the tables, a state, an event. Out: `baytreeUnfit`: what comes first, or "".
 */
"use strict";
globalThis.baytreeUnfit = (() => {
  const { top, placeOf, rowOf, isOver, judgesInWords, planOf, hazardsAt, unread, provedElsewhere } = baytreeTold;
  const { asksAt } = baytreeSpecs;
  const INSTEAD = { check: "this is a check: answer it", action: "this is an action: mark it as done",
    fix: "this is a fix: mark it as done" };

  function unfit(tables, state, event) {
    if (event.event === "start") return unfitStart(tables, state, event);
    if (!state.tree) return "the job hasn't begun: start it first";
    if (Boolean(state.paused) !== (event.event === "resume")) {
      return state.paused ? "resume the job first" : "the job isn't paused";
    }
    return event.event === "resume" ? "" : unfitAtStep(tables, state, event);
  }

  function unfitStart(tables, state, { tree, enter = "", proven = {}, vehicle = "" }) {
    if (state.tree) return "the job has begun already";
    if (!Object.hasOwn(tables.trees, tree)) return `there is no tree \`${tree}\``;
    const { steps } = tables.trees[tree];
    const unknown = [enter, ...Object.keys(proven)].find((one) => one && !Object.hasOwn(steps, one));
    if (unknown) return `the tree \`${tree}\` has no step \`${unknown}\``;
    return vehicle && !tables.shop.vehicles[vehicle] ? `the shop has no vehicle \`${vehicle}\`` : "";
  }

  function unfitAtStep(tables, state, event) {
    const frame = top(state), { step = "" } = event;
    if (!["", frame.step, placeOf(frame)].includes(step)) {
      return `the walk is at \`${placeOf(frame)}\`, not at \`${step}\``;
    }
    if (["pause", "hand_over", "tick", "acknowledge"].includes(event.event)) return "";
    if (event.event === "write_up") {
      return state.end ? "" : "what the papers say is written at an end";
    }
    if (event.event === "rejoin") {
      const isFixed = state.end?.kind === "fix" && isOver(state);
      return isFixed && state.left.length ? "" : "there is no tree to go back to";
    }
    const asks = asksAt(tables, state), names = asks.map(({ name }) => name);
    if (event.event === "fill") {
      return names.includes(event.name) ? "" : `the walk doesn't ask for \`${event.name}\` now`;
    }
    // A check is given up where nobody can look up its spec.
    const hasNoSpec = event.event === "cannot_test" && asks.every(({ limits }) => limits);
    return names.length && !hasNoSpec ? `fill in first: ${names.join(", ")}` : unfitKind(tables, state, event);
  }

  function unfitKind(tables, state, { event, stated: known }) {
    const row = rowOf(tables, top(state));
    if (event === "verify") {
      return judgesInWords(state) ? "" : "there is no test after a repair to judge now";
    }
    if (isOver(state)) return "the walk has ended: correct an answer, or go back";
    if (judgesInWords(state)) return "the repair is done: go through its tests";
    const givesUp = ["cannot_test", "none_of_these"].includes(event) && row.kind !== "fix";
    if (!givesUp && (event === "done") !== ["action", "fix"].includes(row.kind)) return INSTEAD[row.kind];
    if (["run", "take"].includes(event) && !row.by) return "this check runs no procedure: answer it";
    if (event === "take" && !provedElsewhere(state, row)) return "the procedure wasn't run earlier: run it";
    if (event !== "done" && (event !== "answer" || known)) return "";
    const hazards = unread(tables, state, hazardsAt(tables, state, planOf(tables, state)));
    const shorts = hazards.map((one) => tables.shop.hazards[one].short).join(", ");
    return shorts && `read and acknowledge first: ${shorts}`;
  }

  return { unfit };
})();
