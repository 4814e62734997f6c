/* What the papers say in the tech's own words: where it is, the cause, the repair, the parts, what was
 * seen; what of the complaint is left, and how it is after the repair; DTCs, the choice, a reason.
 *
 * In: the walk at a fix, the answers that prove it. Out: the sheet `papers` in `baytreeSheets`. All of
 * it is optional: an empty field leaves the tree's words.
 */
"use strict";
(() => {
  const { h, button, labeled } = baytreeParts;
  const { capital, asked, filledIn } = baytreeWords;
  const { tableOf } = baytreeTold;
  const { ownWords, partsOf, severalPlaces, hasCodes, minutesOver, hasOpenComplaint } = baytreeEnds;
  const { openSheet, closeSheet } = baytreeSheets;
  const FIELDS = [["cause", "Cause"], ["repair", "What is done about it"]];
  const PLACE = [["where", "Where it is: side, axle, or cylinder"]]; // of one of several like parts
  const NOTHING = "none"; // left of the complaint; used of the parts

  function textField(walk, name, label, standard) {
    const box = h("textarea", { id: `w-own-${name}`, rows: "2", maxlength: "200", placeholder: standard, "data-own": name });
    box.value = ownWords(walk)[name] || "";
    return labeled(label, box);
  }

  // A field with answers to tap.
  function choiceField(walk, name, label, standard, choices) {
    const field = textField(walk, name, label, standard), box = field.querySelector("textarea");
    field.append(h("div", { class: "w-links" }, choices.map(([words, value = words.toLowerCase()]) => button(words, () => { box.value = value; }))));
    return field;
  }

  // What was seen: one of the words of the answer, or words of one's own.
  function seenField(walk, entry) {
    const question = filledIn(walk, entry, tableOf(walk.tables, entry.inside).steps[entry.step].text);
    return choiceField(walk, entry.step, asked(question), filledIn(walk, entry, entry.result),
      partsOf(walk, entry).map((words) => [capital(words), words]));
  }

  const isDone = ({ state: { end } }) => end.verified !== undefined && end.verified !== null;

  // Which part of the complaint is left, and what becomes of it? Nobody but the tech knows.
  function complaintFields(walk) {
    const { complaint } = walk.state, own = ownWords(walk), isSeveral = own.complaint || hasOpenComplaint(walk, own);
    return [
      complaint && choiceField(walk, "complaint", `“${complaint}” What of it does this cause not explain?`, "not said", [["All of it is explained", NOTHING]]),
      complaint && isSeveral && choiceField(walk, "next", "What becomes of that?", "not said", [["Quoted"], ["Declined"], ["New appointment"]]),
      complaint && isSeveral && textField(walk, "caused", "Did this fault damage something else? What was done about it?", "nothing"),
      isDone(walk) && textField(walk, "after", "After the repair: complaint gone? DTCs?", "to be written in by hand"),
    ];
  }

  // What an office files beside the tree's words: DTCs, the choice, a reason, who took over.
  function filedFields(walk) {
    const { row, job, state: { end } } = walk, isFix = end.kind === "fix", minutes = isFix && minutesOver(walk);
    return [
      !hasCodes(walk) && choiceField(walk, "codes", "DTCs before the repair, each with its status", "the tech adds them by hand",
        [["None stored"], ["Not scanned"]]),
      isFix && !job.chosen && choiceField(walk, "chosen", "What the customer chose", "the service writer adds it",
        (row.options || []).map(([id, words]) => [words, id])),
      (minutes || ownWords(walk).time) && textField(walk, "time", `${minutes} min, ${row.hours} h on the estimate. Why longer?`, "to be written in by hand"),
      !isFix && (end.kind === "customer" ? textField(walk, "chosen", "What the customer decided", "the service writer adds it")
        : textField(walk, "handed", "Who took the job over?", "to be written in by hand")),
    ];
  }

  // Called as on the estimate, so that the papers know which line each part fills.
  function estimated({ row: { part_names: names = [] } }) {
    return names.length ? [["Those on the estimate", names.map((name) => `${name}, part number , $`).join("; ")]] : [];
  }

  function fixFields(walk, proofs) {
    const { shown } = walk, standard = { cause: shown.cause, repair: shown.text, parts: "as on the estimate" };
    return [...proofs.filter(({ readings }) => !Object.keys(readings).length).map((entry) => seenField(walk, entry)),
      ...[...(severalPlaces(walk) ? PLACE : []), ...FIELDS].map(([name, label]) => textField(walk, name, label, standard[name] || "")),
      choiceField(walk, "parts", "Parts used, with number and price", standard.parts, [["None of them", NOTHING], ...estimated(walk)]), ...complaintFields(walk)];
  }

  baytreeSheets.papers = (walk, proofs) => {
    const own = walk.state.end.kind === "fix" ? fixFields(walk, proofs) : [], filed = filedFields(walk);
    const fields = (isDone(walk) ? [...filed, ...own] : [...own, ...filed]).filter(Boolean); // first what is open then
    openSheet("Words for the papers", h("p", {}, "What the repair order and the customer’s sheet say. What you leave empty stays as it stands, or the paper says who adds it."),
    ...fields, button("Keep these words", () => closeSheet(() => keep(walk, fields)), { class: "w-go", "data-do": "keep" }));
  };

  async function keep(walk, fields) {
    const own = ownWords(walk), boxes = fields.map((field) => field.querySelector("textarea"));
    for (const { dataset: { own: name }, value } of boxes) {
      if (value.trim() !== (own[name] || "")) await walk.send({ event: "write_up", name, text: value.trim() });
    }
  }
})();
