/* The screen of a check: its results, what its readings prove, and the bar that says where an answer
 * leads.
 *
 * In: the walk. Out: `baytreeCheck`: a face as in walk-step.js, and the event of the answer.
 */
"use strict";
globalThis.baytreeCheck = (() => {
  const { h, button } = baytreeParts;
  const { capital, limitsOf, rangeWords, leadsTo } = baytreeWords;
  const { isEmpty } = baytreeAnswers;
  const { line, stepParts, notTicked, restBar, goButton, undoButton, written } = baytreeStep;

  function checkFace(walk) {
    const { row } = walk;
    judge(walk);
    return { step: stepParts(walk), bar: checkBar(walk), answers: [row.by && procedureParts(walk),
      row.readings.length > 0 && baytreeReadings.fields(walk), resultList(walk)] };
  }

  // A check that a procedure answers: run it, or take what it proved earlier in the job.
  function procedureParts(walk) {
    const { shown } = walk, title = shown.procedure === shown.text ? "" : shown.procedure;
    if (!shown.earlier) return [goButton(["Go through the tests", title], () => walk.confirm()), line("w-for", "Or, if you know it already:")];
    return [goButton([`Proved earlier: ${shown.earlier.word}`, "Take it"], () => walk.confirm()),
      button("Test it again", () => walk.send({ event: "run" }), { class: "w-again" })];
  }

  const isStrip = ({ readings, results, by }) => !by && readings.length === 1 && !readings[0].phrases && results.length <= 3;

  function resultList(walk) {
    const { row, view } = walk;
    return h("div", { class: `w-results ${isStrip(row) ? "strip" : view.columns ? "columns" : "rows"}`, role: "group",
      "aria-label": row.by ? "Known already" : "Results" },
      row.results.map((result, at) => button(resultWords(walk, result, at), () => walk.pick(at),
        { "data-result": String(at), ...resultState(walk, at) })));
  }

  function resultWords({ row, shown }, result, at) {
    const { text, means } = shown.results[at], limits = limitsOf(row, result);
    return [h("b", {}, isStrip(row) ? "" : h("span", { class: "w-number", "aria-hidden": "true" }, String(at + 1)),
      capital(rangeWords(row, result, text))), (means || limits) && h("span", {}, means || text)];
  }

  // Results ruled out by a reading are struck through softly, and stay to be pressed.
  function resultState({ judged, view, row }, at) {
    const isDecided = row.readings?.length > 0 && ["decided", "too close to call", "incomplete"].includes(judged.state);
    const name = isDecided && !judged.fits.includes(at) ? "out" : isDecided && judged.state !== "incomplete" ? "fits" : "";
    return { class: name, "aria-pressed": String(view.pick === at) };
  }

  function judge(walk) {
    walk.judged = walk.row.readings?.length ? baytreeReadings.verdict(walk) : { state: "empty", fits: [] };
  }

  // The event that the confirm sends; null as long as nothing is decided.
  function answerOf(walk) {
    const { row, view: { pick }, judged, shown } = walk, answer = { event: "answer", ...written(walk) };
    if (pick === null) {
      if (row.by) return { event: shown.earlier ? "take" : "run" };
      return judged.state === "decided" ? { ...answer, readings: judged.typed } : null;
    }
    if (!row.readings.length) return { ...answer, result: pick, ...(row.by && { stated: true }) };
    if (judged.typed && ["decided", "too close to call"].includes(judged.state) && judged.fits.includes(pick)) {
      return { ...answer, result: pick, readings: judged.typed };
    }
    return { ...answer, result: pick, ...(!isEmpty(row, pick) && { stated: true }) };
  }

  function checkBar(walk) {
    const event = answerOf(walk), { judged, row, view, shown } = walk;
    if (!event && judged.line) {
      return [h("p", { class: `w-verdict ${judged.state.split(" ")[0]}` }, judged.line),
        judged.state === "no result" ? button("None of these", () => walk.sheet("none"), { "data-do": "none" }) : null];
    }
    if (!event || ["run", "take"].includes(event.event)) return restBar(walk);
    const next = notTicked(walk, leadsTo(walk, event)), go = (words, more) => goButton([words, more], () => walk.confirm());
    if (view.pick === null) return [undoButton(walk), go(judged.line, next)];
    return [undoButton(walk), go(pickedWords(row, shown, view.pick, event, judged), next)];
  }

  function pickedWords(row, shown, at, event, judged) {
    const words = capital(rangeWords(row, row.results[at], shown.results[at].text));
    if (!event.stated) return words;
    return judged.typed ? `${words}, against the reading: stated` : `${words}: stated, not measured`;
  }

  return { checkFace, answerOf, checkBar, resultState, judge };
})();
