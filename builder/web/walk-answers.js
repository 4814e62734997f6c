/* Which result an answer gives: builder/walk/answered, in the page. What readings give is in
 * walk-measured.js.
 *
 * In: the row of a check, its tools, an event `answer`. Out: `baytreeAnswers`: the result, counted
 * from 0, its readings, and whether they are too close to a limit; or `{ refused }`.
 */
"use strict";
globalThis.baytreeAnswers = (() => {
  const refuse = (refused) => ({ refused });
  const isEmpty = (row, at) => Object.values(row.results[at].places || {}).includes("none");

  function answered(row, tools, answer) {
    const count = (row.results || []).length, { result = null, stated = false } = answer;
    if (result !== null && !(result >= 0 && result < count)) {
      return refuse(`there is no result ${result}: this check has ${count}, counted from 0`);
    }
    const filled = Object.fromEntries(
      Object.entries(answer.readings || {}).filter(([, text]) => text.trim()));
    if (Object.keys(filled).length) return baytreeMeasured.measured(row, tools, result, filled);
    if (result === null) return refuse("the answer is missing: give a result, or a reading");
    if (row.readings?.length && !stated && !isEmpty(row, result)) {
      return refuse("the reading is missing: type it in, or mark the answer as stated and not measured");
    }
    if ("by" in row && !stated) {
      return refuse("run the procedure, or mark the answer as stated and not measured");
    }
    return { result, readings: {}, too_close: false };
  }

  return { answered, isEmpty };
})();
