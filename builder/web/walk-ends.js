/* The ends of a walk: a fix with what proves it, its verification, a stop, the person to call.
 *
 * In: the walk. Out: `baytreeEnds`: faces as in walk-step.js.
 */
"use strict";
globalThis.baytreeEnds = (() => {
  const { h, button } = baytreeParts;
  const { capital, asked, answerWords, filledIn } = baytreeWords;
  const { placeOf, tableOf, stepsBeforeRepair } = baytreeTold;
  const { heading, line, ticks, linesLeft, notTicked, wasReady, changesFirst, shows, links, context, cautions, backButton, goButton, undoButton, noteFields } = baytreeStep;
  const DRIVE = { yes: "Drive: yes.", "with care": "Drive: with care.", no: "Do not drive." };
  const HANDED_ON = ["foreman", "not-this-tree", "unsafe", "stuck"]; // somebody else goes on
  const SEVERAL = /\b(?:and|also|plus|then|too)\b|[;+&]/i; // as in complaint_lines.py

  function saveRecord({ job, record }) {
    const name = [job.order, job.tree.replace("/", "-")].filter(Boolean).join("-");
    baytreeSave(`${name}.json`.replace(/[^\w.-]+/g, "_"), record());
  }

  const recordButton = (walk) => button("Record", () => saveRecord(walk), { "data-do": "record" });

  function drive({ shown }) {
    return shown.drive && h("p", { class: "w-drive" }, h("b", {}, DRIVE[shown.drive]), shown.why ? ` ${shown.why}` : "");
  }

  // What proves a fix: the check that led to it, and those it rests on; no test after the repair.
  function provedBy({ state, row }) {
    const { inside } = state.frames[0], wanted = (row.proved_by || []).map(([step]) => step);
    const checks = stepsBeforeRepair(state).filter((one) => one.kind === "check" && one.inside === inside && one.result);
    return checks.filter((one, at) => at === checks.length - 1 || wanted.includes(one.step));
  }

  function proofs(walk) {
    const { tables } = walk, shown = provedBy(walk);
    return shown.length > 0 && [h("h2", {}, "What proves it"), h("ul", { class: "w-done" }, shown.map((one) => h("li", {},
      asked(filledIn(walk, one, tableOf(tables, one.inside).steps[one.step].text)), h("b", {}, answerWords(walk, one)), one.means ? ` (${one.means})` : "")))];
  }

  // The papers

  const ownWords = ({ state }) => state.write_up[placeOf(state.end)] || {};

  // Answers that stand for more than one thing: which of them was seen?
  function partsOf({ tables }, entry) {
    const { results } = tableOf(tables, entry.inside).steps[entry.step];
    return results.find(({ text }) => text === entry.result)?.parts || [];
  }

  // Is it one of several like parts, which the tree can't name?
  const severalPlaces = ({ tables, state }) => Boolean(tableOf(tables, state.end.inside).steps[state.end.step].several_places);

  const hasOpenComplaint = ({ state }, own) => Boolean(state.complaint) && !own.complaint
    && (SEVERAL.test(state.complaint) || state.end.inside !== state.tree);

  // Were DTCs written down before the repair? As typed for the job, or on the way.
  const hasCodes = ({ job, state }) => Boolean(job.codes)
    || stepsBeforeRepair(state).some(({ wrote = {} }) => Object.keys(wrote).some((name) => name.includes("DTC")));

  // Minutes of the repair and its tests, where they are well over the estimate; else 0.
  function minutesOver({ state, row }) {
    const spent = state.steps.slice(stepsBeforeRepair(state).length)
      .reduce((sum, { minutes, event }) => sum + (event >= 0 ? minutes || 0 : 0), 0);
    return row.hours && spent / 60 - Number(row.hours) > 0.2 ? spent : 0;
  }

  // What the papers still need at an end, as in still_to_write.py.
  function stillOpen(walk) {
    const { job, state: { end } } = walk, own = ownWords(walk);
    const open = { "DTCs before the repair": !own.codes && !hasCodes(walk) };
    if (end.kind !== "fix") return { ...open, "who took it over": HANDED_ON.includes(end.kind) && !own.handed,
      "what the customer decided": end.kind === "customer" && !own.chosen };
    return { ...open, "what the customer chose": !own.chosen && !job.chosen, "why it took longer": !own.time && minutesOver(walk),
      "complaint and DTCs after the repair": !own.after, "what becomes of the rest": (own.complaint || "none") !== "none" && !own.next };
  }

  function openWords(walk) {
    const words = Object.entries(stillOpen(walk)).filter(([, isOpen]) => isOpen).map(([name]) => name).join(", ");
    return words && !walk.practice && line("w-for", `Not ready to file: ${words}.`);
  }

  // Named by what is still open: a cause or an answer that says more than one thing.
  function papersButton(walk, proofs) {
    const { shown, state } = walk, own = ownWords(walk);
    const isOpen = state.end.kind === "fix" && (proofs.some((entry) => partsOf(walk, entry).length && !own[entry.step])
      || hasOpenComplaint(walk, own) || (severalPlaces(walk) && !own.where) || (/ or /.test(shown.cause || "") && !own.cause) || (/ or /.test(shown.text) && !own.repair));
    return h("p", { class: "w-links" }, button(isOpen ? "Papers: say which it was" : "Words for the papers",
      () => walk.sheet("papers", proofs), { "data-do": "papers" }));
  }

  // Faces

  function fixFace(walk) {
    const { shown } = walk, { tests = [] } = shown, putsBack = !changesFirst(walk).includes("put back")
      && (shown.lines || []).some(({ of }) => of === "put back");
    return { end: true, step: [...context(walk), ...cautions(walk),
      h("div", { class: "w-end fix" }, line("w-label", "Fix"), heading(shown.cause ? capital(shown.cause) : shown.text),
        shown.cause && line("w-repair", shown.text)),
      ...(proofs(walk) || []), papersButton(walk, provedBy(walk)), drive(walk), links(walk, 0),
      ticks(walk, linesLeft(walk)), ...noteFields(walk, "Write down: "),
      putsBack && [h("h2", {}, "Then put back"), ticks(walk, ["put back"])],
      shown.tell && [h("h2", {}, "Tell the customer"), h("p", {}, shown.tell.replace(/<[^<>]+>/g, "(not measured)"))],
      tests.length > 0 && [h("h2", {}, "Then verify"), h("ul", { class: "w-done" }, tests.map((test) => h("li", {}, capital(test))))]].flat(),
      bar: [backButton(walk), recordButton(walk), goButton([tests.length ? "Repair done, verify it" : "Repair done", notTicked(walk, "")], () => walk.confirm())] };
  }

  function verifyFace(walk) {
    const { shown: { verify }, view } = walk;
    const result = (words, at) => button(h("b", {}, words), () => walk.pick(at),
      { "data-result": String(at), "aria-pressed": String(view.pick === at) });
    return { end: true, step: [line("w-inside", `After the repair: test ${verify.index + 1} of ${verify.count}`),
      ...cautions(walk), heading(capital(verify.text)), shows(walk), !wasReady(walk) && ticks(walk, ["put back"])],
      answers: [h("div", { class: "w-results rows", role: "group", "aria-label": "Results" }, result("Good", 0), result("Not good", 1))],
      bar: verifyBar(walk) };
  }

  function verifyBar(walk) {
    const { view: { pick } } = walk;
    if (pick === null) return [backButton(walk)];
    const event = { event: "verify", passed: pick === 0 };
    return [undoButton(walk), goButton([pick === 0 ? "Good" : "Not good", notTicked(walk, baytreeWords.leadsTo(walk, event))], () => walk.send(event))];
  }

  function overFace(walk) {
    const { shown, state } = walk, { kind, verified } = state.end;
    const title = kind === "fix" ? (verified ? "Repaired and verified" : "Repaired, not tested")
      : kind === "stuck" ? stuckWords(state) : shown.text;
    return { end: true, step: [
      h("div", { class: `w-end ${kind === "fix" ? "fix" : "stop"}` },
        line("w-label", kind === "fix" ? shown.text : walk.tables.names.stops[kind] || ""), heading(title)),
      walk.practice && line("w-shows", walk.practice.endWords(state)),
      kind === "stuck" && [seenLine(state), call(walk)], !verified && drive(walk), // it speaks of the vehicle before the repair
      shown.lines && [h("h2", {}, "Before the vehicle goes"), ticks(walk, ["put back"])],
      kind === "fix" && (proofs(walk) || []), openWords(walk), (kind === "fix" || !walk.practice) && papersButton(walk, kind === "fix" ? provedBy(walk) : []),
    ].flat(3), bar: overBar(walk) };
  }

  const isUntested = ({ steps }) => steps[steps.length - 1]?.result === "cannot test";
  const stuckWords = (state) => (isUntested(state) ? "Can’t be tested here" : "Nothing here fits");

  // What was written for the person to call; a procedure that can't be done has the line in its own check.
  function seenLine(state) {
    const isOpen = ({ result }) => ["cannot test", "none of these"].includes(result), { steps } = state;
    const { seen } = steps.slice(steps.findLastIndex((one) => !isOpen(one)) + 1).find((one) => one.seen) || {};
    return seen && line("w-for", `${isUntested(state) ? "In the way" : "Seen"}: ${seen}`);
  }

  function overBar(walk) {
    const { shown } = walk;
    const home = (words, name) => h("a", { class: name, href: `${walk.root}index.html#jobs` }, h("b", {}, words));
    if (walk.practice) return [backButton(walk), home("Home", "w-link"), goButton(["Practice again"], () => walk.startPractice())];
    return [backButton(walk), recordButton(walk), shown.rejoin
      ? goButton(["Back to the other tree"], () => walk.send({ event: "rejoin" })) : home("All jobs", "w-go")];
  }

  // The person to call, as a link that dials.
  function call({ shown: { call: person = {} } }) {
    const number = (person.phone || "").replace(/[^+0-9]/g, "");
    const words = [person.call || "the foreman", person.phone].filter(Boolean).join(", ");
    return number ? h("a", { class: "w-go w-call", href: `tel:${number}` }, h("b", {}, `Call ${words}`))
      : h("p", { class: "w-repair" }, `Call ${words}.`);
  }

  return { saveRecord, ownWords, partsOf, severalPlaces, hasCodes, minutesOver, hasOpenComplaint, fixFace, verifyFace, verifyBar, overFace };
})();
