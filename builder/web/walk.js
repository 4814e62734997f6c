/* Readings typed into a tree's checks.
 *
 * In: the walk table in the page, and its step cards. Out: a small form in each check that measures
 * something. It shows the result that matches the readings and links to its step, or says that a
 * reading is too close to a limit for the tool. The cards work without this script.
 */
"use strict";
(() => {
  const { read, rounded } = baytreeExact;
  const { ofKind, sign, written } = baytreeQuantities;
  const { follow } = baytreeFollow;
  const { element, answerAsTyped, showMistake, withUnit } = baytreeDom;
  const table = JSON.parse(document.getElementById("walk-table").content.textContent);
  const SPECS = { from: "Spec, low", to: "Spec, high", limit: "Spec" };
  const DIGITS = 4; // shown of a calculated value

  const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
  const marked = (text) => (baytreeTrade.mark === "comma" ? text.replace(".", ",") : text);
  const listed = (texts) => texts.join(", ");
  const noted = (texts) => texts.join("; ");

  // Fields

  function fieldsOf(row) {
    const unit = row.readings[0].unit;
    const figures = (row.figure || []).map((name) => ({ name, label: SPECS[name], unit, low: "0" }));
    const readings = row.readings.map((reading) => ({
      ...reading, label: reading.name ? sentence(reading.name) : "Reading" }));
    return [...figures, ...readings];
  }

  function field(step, reading, at) {
    const id = `read-${step}-${at}`;
    const wrong = element("p", { id: `${id}-wrong`, class: "wrong", hidden: "" });
    const box = reading.phrases ? choice(id, reading) : entry(id, reading);
    return element("div", { class: "field" },
      element("label", { for: id }, reading.label), box, wrong);
  }

  function choice(id, reading) {
    const options = ["", ...reading.phrases].map((text) => element("option", {}, text));
    return element("select", { id, name: reading.name, "aria-describedby": `${id}-wrong` }, ...options);
  }

  // A phone's number pad has no minus, so a field gets it only if it needs none.
  function entry(id, reading) {
    const box = element("input", { id, name: reading.name, type: "text", autocomplete: "off",
      autocapitalize: "off", spellcheck: "false", maxlength: "40", "aria-describedby": `${id}-wrong` });
    if (!reading.low.startsWith("-")) box.inputMode = "decimal";
    const units = [reading.unit, ...ofKind(reading.unit).filter((unit) => unit !== reading.unit)];
    const beside = units.length === 1 ? element("span", { class: "unit" }, sign(reading.unit))
      : element("select", { "aria-label": `Unit of: ${reading.label}` },
        ...units.map((unit) => element("option", { value: unit }, sign(unit))));
    return element("div", { class: "value" }, box, beside);
  }

  function text(box) {
    const beside = box.parentElement.querySelector("select");
    return withUnit(box.value, beside === box ? "" : beside?.value).trim();
  }

  // Answers

  function lead(ways, at) {
    const way = ways.children[at].querySelector(".way");
    const number = way.querySelector(".way-number");
    const where = way.querySelector(".way-to").textContent.replace(/\s+/g, " ").trim();
    const words = number ? `Go to step ${where.replace(/^[0-9]+/, "$&,")}` : sentence(where);
    return way.href ? element("a", { href: way.getAttribute("href"), class: "way-link" }, words)
      : element("span", {}, words);
  }

  function resultText(ways, at) {
    const means = ways.children[at].querySelector(".way-means");
    const range = ways.children[at].querySelector(".way-said b").textContent;
    return means ? `${range}, ${means.textContent}` : range;
  }

  // Calculated values if there are any; the typed ones are in their fields.
  function figures(row, values) {
    const computed = row.computed.filter(({ name }) => values[name]);
    const rows = computed.length ? computed : row.readings.filter(({ name }) => name in values);
    return listed(rows.map((shown) => `${shown.name} ${figure(shown, values[shown.name])}`.trim()));
  }

  function figure(row, value) {
    if (row.phrases) return row.phrases[Number(value)];
    if (value === "Infinity") return "OL";
    return marked(written(row.form ? rounded(read(value), DIGITS) : value, row.unit).trim());
  }

  function decidedText(row, ways, outcome) {
    const [at] = outcome.fits;
    return [element("p", {}, element("b", {}, figures(row, outcome.values)),
      `: ${resultText(ways, at)}. `, lead(ways, at))];
  }

  function tooCloseText(row, ways, outcome) {
    const possible = outcome.fits.map((at) => `${resultText(ways, at)} (${place(ways, at)})`);
    return [element("p", {}, element("b", {}, `${figures(row, outcome.values)}: too close to call. `),
      `${possible.join(" or ")}. ${accuracy(row, outcome.errors)}. Use a finer range and reread.`)];
  }

  function place(ways, at) {
    const number = ways.children[at].querySelector(".way-number");
    return number ? `step ${number.textContent}` : "another tree";
  }

  // "Multimeter: ±23 mV at plus, ±21 mV at ground". Each tool is named once.
  function accuracy(row, errors) {
    const units = Object.fromEntries(row.readings.map(({ name, unit }) => [name, unit]));
    const byTool = {};
    for (const [name, [tool, digits]] of Object.entries(errors)) {
      const error = marked(written(rounded(read(digits), 2, "up"), units[name]));
      (byTool[tool] ||= []).push(name ? `±${error} at ${name}` : `±${error}`);
    }
    return Object.entries(byTool).map(([tool, all]) => `${tool}: ${listed(all)}`).join("; ");
  }

  function incompleteText(row, ways, outcome, missing) {
    const possible = outcome.fits.length < row.results.length
      ? ` Still possible: ${noted(outcome.fits.map((at) => resultText(ways, at)))}.` : "";
    return [element("p", {}, `Enter: ${noted(missing)}.${possible}`)];
  }

  const noResultText = (row, ways, outcome) => [element("p", { class: "wrong" },
    `${figures(row, outcome.values)}: no result matches.`)];

  const ANSWERS = {
    decided: decidedText, "too close to call": tooCloseText, incomplete: incompleteText,
    "no result": noResultText,
  };
  const MARKS = { decided: "match", "too close to call": "possible" };

  function markRows(ways, outcome) {
    [...ways.children].forEach((row, at) => {
      row.querySelectorAll(".fit").forEach((old) => old.remove());
      const fits = MARKS[outcome.state] && outcome.fits.includes(at);
      row.firstElementChild.classList.toggle("fits", Boolean(fits));
      if (fits) row.querySelector(".way-said").append(
        element("span", { class: "fit" }, " ", element("span", { class: "mark" }, MARKS[outcome.state])));
    });
  }

  function attach(id, row) {
    const card = document.getElementById(`step-${id}`);
    const ways = card && card.querySelector("ol.ways");
    if (!ways) return;
    const fields = fieldsOf(row);
    const answer = element("output", { class: "answer", "aria-live": "polite" });
    const form = element("form", { class: "readings", autocomplete: "off" },
      element("div", { class: "fields" }, ...fields.map((shown, at) => field(id, shown, at))), answer);
    const boxes = fields.map((_, at) => form.querySelector(`[id="read-${CSS.escape(id)}-${at}"]`));
    let previous = "";

    // Leaving a field to press the link must keep the link: the same answer isn't written again.
    function show() {
      const typed = Object.fromEntries(boxes.map((box) => [box.name, text(box)]));
      const current = JSON.stringify(typed);
      if (current === previous) return;
      previous = current;
      const outcome = follow(table, id, typed);
      for (const box of boxes) showMistake(box, outcome.mistakes[box.name]);
      markRows(ways, outcome);
      const missing = fields.filter(({ name }) => !typed[name]).map(({ label }) => label.toLowerCase());
      const answerText = ANSWERS[outcome.state];
      answer.replaceChildren(...(answerText ? answerText(row, ways, outcome, missing) : []));
    }

    answerAsTyped(form, show);
    ways.before(form);
  }

  for (const [id, row] of Object.entries(table.steps)) attach(id, row);
})();
