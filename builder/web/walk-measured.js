/* Which result the readings of an answer give, and what is recorded of them: the part of
 * builder/walk/answered that a check with readings needs. Loaded where one comes.
 *
 * In: the row of a check, its tools, the result that was pressed or null, readings as typed. Out:
 * `baytreeMeasured`, as in walk-answers.js.
 */
"use strict";
globalThis.baytreeMeasured = (() => {
  const { readAs } = baytreeFollow;
  const { isEmpty } = baytreeAnswers;
  const NOTHING_SHOWN = "nothing shown";
  const refuse = (refused) => ({ refused });
  const quoted = (texts, word) => texts.map((text) => `\`${text}\``).join(` ${word} `);

  function measured(row, tools, result, filled) {
    if (!row.readings?.length) return refuse("this check has no reading: give a result");
    if (Object.values(filled).some(isNothing)) return nothingShown(row, filled);
    const outcome = readAs(row, tools, filled);
    if (outcome.state === "invalid") {
      return refuse(Object.entries(outcome.mistakes)
        .map(([name, words]) => (name ? `${name}: ${words}` : words)).join("; "));
    }
    if (outcome.state === "incomplete") return refuse(`still to be read: ${missing(row, filled)}`);
    if (outcome.state === "no result") {
      return refuse("no result covers that: measure again, or choose none of these");
    }
    return decided(row, result, outcome, filled);
  }

  const isNothing = (text) => text.trim().toLowerCase() === NOTHING_SHOWN;

  function decided(row, result, outcome, filled) {
    const texts = outcome.fits.map((at) => row.results[at].text);
    if (result !== null && !outcome.fits.includes(result)) {
      return refuse(`that reads as ${quoted(texts, "or")}: measure again, or take that`);
    }
    const too_close = outcome.state === "too close to call";
    if (too_close && result === null) {
      return refuse(`too close to call between ${quoted(texts, "and")}: measure again with a finer`
        + " tool, or choose one");
    }
    return { result: result ?? outcome.fits[0], readings: recordedReadings(row, outcome, filled), too_close };
  }

  function nothingShown(row, filled) {
    const result = row.results.findIndex((_, at) => isEmpty(row, at));
    if (result < 0) return refuse("no result here is `nothing shown`: check the leads, or can't test");
    const readings = Object.fromEntries(Object.entries(filled)
      .map(([name, typed]) => [name, { value: NOTHING_SHOWN, unit: "", typed }]));
    return { result, readings, too_close: false };
  }

  // The specs that were looked up, the readings, and what was computed from them.
  function recordedReadings(row, outcome, filled) {
    const recorded = {}, unitOfSpec = row.readings[0].unit;
    for (const name of row.figure || []) {
      const typed = filled[name]?.trim();
      if (typed) recorded[name] = { value: typed, unit: unitOfSpec, typed };
    }
    for (const { name, unit, phrases } of row.readings) {
      const typed = filled[name]?.trim();
      if (typed) recorded[name] = { value: phrases ? typed : valueText(outcome.values[name]), unit, typed };
    }
    for (const { name, unit } of row.computed) {
      if (outcome.values[name]) recorded[name] = { value: outcome.values[name], unit, typed: "" };
    }
    return recorded;
  }

  const valueText = (digits) => (digits === "Infinity" ? "OL" : digits);

  function missing(row, filled) {
    return [...(row.figure || []), ...row.readings.map(({ name }) => name)]
      .filter((name) => !(name in filled)).map((name) => name || "the reading").join(", ");
  }

  return { measured, isNothing, NOTHING_SHOWN };
})();
