/* What a walk shows at its step, and its record: builder/walk/screen and record, in the page.
 *
 * In: the tables, a state. Out: `baytreeRecord`: maps as Python has them; what would be empty is
 * left out.
 */
"use strict";
globalThis.baytreeRecord = (() => {
  const { read, add, rounded } = baytreeExact;
  const { top, placeOf, tableOf, rowOf, isOver, fillIn, planOf, linesOf, hazardsAt, inFull, unread,
    itemsOf, asksAt } = baytreeTold;
  const { runKey } = baytreeTargets;
  const { parts } = baytreeVehicle;

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
      ...words(row, frame), ...cautionAndLines(tables, state, plan), ...answers(tables, state, row),
      ...progress(tables, state, row), ...minutes(row, plan), ...end(tables, state) }) };
  }

  function phaseOf(state, asks) {
    if (state.paused) return "paused";
    if (asks.length) return "fill";
    if (state.verifying !== null && !state.frames.some((one) => one.verifies)) return "verify";
    return isOver(state) ? "end" : "step";
  }

  function words(row, { filled }) {
    const text = (words = "") => fillIn(words, filled), list = (texts = []) => texts.map(text);
    return { text: text(row.text), note: text(row.note), at: text(row.at), when: list(row.when),
      write_down: list(row.write_down) };
  }

  function cautionAndLines(tables, state, plan) {
    const hazards = hazardsAt(tables, state, plan);
    return {
      lines: linesOf(tables, state, plan)
        .map(({ of, text }, line) => ({ text, of, ticked: state.ticked.includes(line) })),
      now: plan.states.map((held) => {
        const [id, part, current] = parts(held);
        return (tables.shop.conditions[id].text || "")
          .replaceAll("<part>", () => part).replaceAll("<current>", () => current);
      }).filter(Boolean),
      hazards: hazards.map((id) => ({ id, full: inFull(tables, state, id) })),
      unread: unread(tables, state, hazards),
    };
  }

  function answers(tables, state, row) {
    const { filled } = top(state);
    const results = (row.results || []).map(({ text, means = "" }) => withoutEmpty(
      { text: fillIn(text, filled), means: fillIn(means, filled) }));
    if (!row.by) return { results, readings: readings(row), look_up: row.look_up };
    const [word, place] = state.proved[runKey(row, top(state))] || [];
    return { results, procedure: tables.shop.procedures[row.by.procedure]?.title,
      earlier: place && place !== placeOf(top(state)) ? { word, step: place } : null };
  }

  function readings(row) {
    const all = row.readings || [];
    return [...(row.figure || []).map((name) => ({ name, unit: all[0].unit })),
      ...all.map(({ name, unit, phrases }) => (phrases ? { name, unit, phrases } : { name, unit }))];
  }

  function progress(tables, state, row) {
    const frame = top(state), items = itemsOf(tables, state, row), tests = row.verify || [];
    const index = state.verifying;
    return {
      item: items ? items[frame.items[frame.step]] : "",
      visit: row.at_most ? [frame.counts[frame.step] ?? 1, row.at_most] : null,
      passed: state.passed.map((place) => {
        const [inside, step] = place.split("#");
        return tableOf(tables, inside).steps[step].text;
      }),
      verify: index !== null && row.kind === "fix"
        ? { index, count: tests.length, text: tests[index].text || "" } : null,
    };
  }

  // The minutes of the step and its changes.
  function minutes(row, plan) {
    const changes = [...plan.first, ...plan.after];
    const sum = (own, key) => changes.reduce((total, one) => add(total, one[key]), read(own || "0"));
    const digits = (value) => (value[0] ? rounded(value) : "");
    return { minutes: digits(sum(row.minutes, "minutes")), wait: digits(sum(row.wait, "wait")) };
  }

  function end(tables, state) {
    if (!state.end) return {};
    const isFixed = state.end.kind === "fix" && isOver(state);
    return { end: endRow(state.end), call: state.end.kind === "stuck" ? tables.shop.stuck : null,
      rejoin: isFixed && state.left.length ? placeOf(state.left[0]) : "" };
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
        const [inside, step] = place.split("#");
        return { in: inside, step, hazard, who, at };
      }),
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
