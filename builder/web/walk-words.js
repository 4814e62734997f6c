/* What the screens of a walk say: limits, readings, where an answer leads, minutes.
 *
 * In: the tables, the state, rows. Out: `baytreeWords`, texts.
 */
"use strict";
globalThis.baytreeWords = (() => {
  const { top, tableOf, rowOf, fillIn, named } = baytreeTold;
  const { reduce } = baytreeReduce;
  const marked = (digits) => (baytreeTrade.mark === "comma" ? digits.replace(".", ",") : digits).replace("-", "−");
  const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
  const figure = (value, unit) => (/^-?[0-9]/.test(value) ? `${marked(value)} ${baytreeQuantities.sign(unit)}`.trim() : value);

  // A range of two cuts: "below 13.4 V", "13.4 to 14.9 V".
  function limits([[low, lowAfter], [high, highAfter]], unit) {
    if (low === "-Infinity") return high === "Infinity" ? "" : highAfter ? `${figure(high, unit)} or less` : `below ${figure(high, unit)}`;
    if (high === "Infinity") return lowAfter ? `above ${figure(low, unit)}` : `${figure(low, unit)} or more`;
    return low === high ? figure(low, unit) : `${marked(low)} to ${figure(high, unit)}`;
  }

  // The limits of a result where it names a spec, as a check with one reading shows them.
  function limitsOf(row, result) {
    const [name] = Object.keys(result.places || {});
    if (name === undefined || result.places[name] === "none") return "";
    const reading = row.readings.find((one) => one.name === name);
    return reading && result.ranges[name] ? limits(result.ranges[name], reading.unit) : "";
  }

  // "at most 0.5 V" as people say it, as in value_text.py.
  const spoken = (text) => text.replace(/\bat (most|least) ([^,]+)/g, (_, side, value) => `${value} or ${side === "most" ? "less" : "more"}`);

  // A result by the limits of its spec, else by the tree's words, with the unit of the range they end in.
  function rangeWords(row, result, text = result.text) {
    const [name, ...others] = Object.keys(result.ranges || {});
    const { unit } = [...row.readings, ...row.computed || []].find((one) => one.name === name) || {};
    const isOne = unit && !others.length && /[0-9]$/.test(text);
    return limitsOf(row, result) || (name === undefined ? text : spoken(isOne ? `${text} ${baytreeQuantities.sign(unit)}` : text));
  }

  // Where an event leads, found by doing it: "Next: Load test", "Fix: Replace the belt".
  function leadsTo({ tables, state }, event) {
    const after = reduce(tables, state, event);
    if (after.load) return `Tree: ${titleOf(tables, state, after.load)}`;
    return after.refused ? "" : placeWords(tables, after);
  }

  function titleOf(tables, state, id) {
    return tables.more[state.frames[0].inside]?.titles[id] || tables.trees[id]?.title || id;
  }

  function placeWords(tables, state) {
    if (state.end?.kind === "stuck") return stepWords(tables, state);
    if (state.end?.verified) return "Repaired and verified";
    const kind = state.verifying === null ? { fix: "Fix", stop: "Stop" }[rowOf(tables, top(state)).kind] : "Verify";
    return `${kind || "Next"}: ${stepWords(tables, state)}`;
  }

  function stepWords(tables, state) {
    const frame = top(state), row = rowOf(tables, frame);
    if (state.end?.kind === "stuck") return `Call ${tables.shop.stuck.call || "the foreman"}`;
    const test = state.verifying === null ? null : row.verify?.[state.verifying]?.text;
    return fillIn(test || row.text, named(tables, frame));
  }

  // A text of a step that was done, with what fills it in the tree; elsewhere as a plain word.
  function filledIn({ tables, state }, entry, text) {
    const base = state.frames[0], known = entry.inside === base.inside ? named(tables, base) : {};
    return fillIn(text, known).replace(/<([^<>]+)>/g, "$1");
  }

  // The words of a recorded step; of a test after the repair those of its check, its procedure or its own.
  function doneWords(walk, entry) {
    const { tables } = walk, { inside, step, kind, seen } = entry, { text } = tableOf(tables, inside).steps[kind === "verify" ? seen : step] || {};
    return filledIn(walk, entry, text || tables.shop.procedures[seen]?.title || seen);
  }

  // Steps left by an answer or done, and the one where the walk is; what a procedure returns is none.
  const stepNumber = ({ done }) => done.filter(({ event }) => /^(answer|done|cannot|none|take|verify)/.test(event)).length + 1;

  // "Battery at rest: " before an answer; a question needs no colon.
  const asked = (text) => (text.endsWith("?") ? `${text} ` : `${text}: `);

  // The answer of a recorded step: "14.2 V", "good".
  function answerWords(walk, entry) {
    const { readings, stated, item } = entry, result = filledIn(walk, entry, entry.result);
    const typed = Object.values(readings).map(({ value, unit }) => figure(value, unit));
    const words = typed.length ? typed.slice(0, 2).join(", ") : result;
    return [item, words, stated ? "stated" : ""].filter(Boolean).join(", ");
  }

  // What the tree's script says is left from the step of the tree on.
  const minutesLeft = ({ more }, { frames: [{ inside, step }], end }) => (end ? "" : more[inside]?.left[step] || "");

  // The colors of a wire by name: "white/blue"; as it's written where a code isn't known.
  function colorWords({ names: { colors } }, wire) {
    const known = wire.split(" ")[0].split("/").map((code) => colors[code]?.[0]);
    return known.every(Boolean) ? known.join("/") : wire;
  }

  // A connector by its part, and by what its ID says more: "EPS module C1".
  const connectorName = ({ shop: { parts } }, id, { of }) => `${parts[of] ?? of} ${id.startsWith(of) ? id.slice(of.length + 1).toUpperCase() : id}`.trim();

  return { marked, capital, asked, figure, limitsOf, rangeWords, leadsTo, stepWords, stepNumber, filledIn, doneWords, answerWords, minutesLeft, colorWords, connectorName };
})();
