/* An earlier answer of a walk corrected: the part of builder/walk/reduce that few walks need.
 *
 * In: the tables, a state, an event `correct`. Out: `baytreeCorrect`: the state after the same events
 * with the other answer, or `{ refused }`. Loaded when it is asked for.
 */
"use strict";
globalThis.baytreeCorrect = (() => {
  const { BEGINNING, oneMore, asItIs, same } = baytreeReduce;
  const { physicalStates } = baytreeTold;
  const refuse = (refused) => ({ refused });

  // Plays the events again with another answer, as far as they still fit.
  function corrected(tables, state, event) {
    const reason = notCorrectable(state, event);
    if (reason) return refuse(reason);
    const entry = state.steps[event.index];
    let again = played(tables, [...state.done.slice(0, entry.event), otherAnswer(state, event, entry)]);
    if (again.refused) return again;
    for (const later of state.done.slice(entry.event + 1)) {
      const following = oneMore(tables, again, later);
      if (following.refused) {
        const asIs = { now: physicalStates(tables, state), known: state.known, put_back: state.put_back,
          since: event.at || "" };
        again = { ...asItIs(again, asIs), done: [...again.done, { asIs }] };
        break;
      }
      again = following;
    }
    if (same(again.steps, state.steps)) return state;
    const struck = state.steps.filter((one) => !again.steps.some((other) => same(one, other)));
    return { ...again, struck: [...state.struck, ...struck], acknowledged: state.acknowledged,
      events: [...state.events, event], before: state };
  }

  function notCorrectable({ paused, steps }, { index }) {
    if (paused) return "resume the job first";
    if (!(index >= 0 && index < steps.length)) {
      return `there is no step ${index}: the record has ${steps.length}, from 0`;
    }
    const { kind, event } = steps[index];
    return kind === "check" && event >= 0 ? "" : "only the answer of a check can be corrected";
  }

  function otherAnswer(state, { result, readings, stated }, entry) {
    const { at, who } = state.done[entry.event];
    return { event: "answer", step: `${entry.inside}#${entry.step}`, result, readings, stated, wrote: entry.wrote, at, who };
  }

  function played(tables, events) {
    let state = BEGINNING;
    for (const event of events) {
      state = oneMore(tables, state, event);
      if (state.refused) break;
    }
    return state;
  }

  return { corrected };
})();
