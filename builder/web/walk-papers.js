/* What the papers say in the tech's own words: where it is, the cause, the repair, the parts, what was
 * seen; what of the complaint is left, and how it is after the repair.
 *
 * In: the walk at a fix, the answers that prove it. Out: the sheet `papers` in `baytreeSheets`. All of
 * it is optional: an empty field leaves the tree's words.
 */
"use strict";
(() => {
  const { h, button, labeled } = baytreeParts;
  const { capital, asked, filledIn } = baytreeWords;
  const { tableOf } = baytreeTold;
  const { ownWords, partsOf, severalPlaces } = baytreeEnds;
  const { openSheet, closeSheet } = baytreeSheets;
  const FIELDS = [["cause", "Cause"], ["repair", "What is done about it"], ["parts", "Parts used"]];
  const PLACE = [["where", "Where it is: side, axle, or cylinder"]]; // of one of several like parts
  const NOTHING = "none"; // the cause explains all of the complaint

  function textField(walk, name, label, standard) {
    const box = h("textarea", { id: `w-own-${name}`, rows: "2", maxlength: "200", placeholder: standard, "data-own": name });
    box.value = ownWords(walk)[name] || "";
    return labeled(label, box);
  }

  // What was seen: one of the words of the answer, or words of one's own.
  function seenField(walk, entry) {
    const question = filledIn(walk, entry, tableOf(walk.tables, entry.inside).steps[entry.step].text);
    const field = textField(walk, entry.step, asked(question), filledIn(walk, entry, entry.result));
    const box = field.querySelector("textarea");
    const choices = partsOf(walk, entry).map((words) => button(capital(words), () => { box.value = words; }));
    field.append(h("div", { class: "w-links" }, choices));
    return field;
  }

  // Which part of the complaint is left? Nobody but the tech knows.
  function complaintFields(walk) {
    const { complaint, end } = walk.state;
    const rest = complaint && textField(walk, "complaint", `“${complaint}” What of it does this cause not explain?`, "not said");
    const after = end.verified !== undefined && end.verified !== null
      && textField(walk, "after", "After the repair: complaint gone? DTCs?", "to be written in by hand");
    if (rest) rest.append(h("div", { class: "w-links" }, button("All of it is explained", () => { rest.querySelector("textarea").value = NOTHING; })));
    return [rest, after].filter(Boolean);
  }

  baytreeSheets.papers = (walk, proofs) => {
    const { shown } = walk, standard = { cause: shown.cause, repair: shown.text, parts: "as on the estimate" };
    const fields = [...proofs.filter(({ readings }) => !Object.keys(readings).length).map((entry) => seenField(walk, entry)),
      ...[...(severalPlaces(walk) ? PLACE : []), ...FIELDS].map(([name, label]) => textField(walk, name, label, standard[name] || "")), ...complaintFields(walk)];
    openSheet("Words for the papers", h("p", {}, "What the repair order and the customer’s sheet say. Leave empty what is right as it stands."),
    ...fields, button("Keep these words", () => closeSheet(() => keep(walk, fields)), { class: "w-go", "data-do": "keep" }));
  };

  async function keep(walk, fields) {
    const own = ownWords(walk), boxes = fields.map((field) => field.querySelector("textarea"));
    for (const { dataset: { own: name }, value } of boxes) {
      if (value.trim() !== (own[name] || "")) await walk.send({ event: "write_up", name, text: value.trim() });
    }
  }
})();
