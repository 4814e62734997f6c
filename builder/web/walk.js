/* Readings typed in beside the limits of a tree's checks.
 *
 * In: the walk table in the page, and its step cards. Out: a small form in each check that measures
 * something: it says which result the figures fall into, leads there, and says so where they lie too
 * close to a limit for the tool. Without this script the cards are whole all the same.
 */
"use strict";
(() => {
  const { read, rounded } = baytreeExact;
  const { ofKind, sign, written } = baytreeQuantities;
  const { follow } = baytreeFollow;
  const { element, answerAsTyped, showMistake, withUnit } = baytreeDom;
  const table = JSON.parse(document.getElementById("walk-table").content.textContent);
  const FIGURES = { from: "Spec, low", to: "Spec, high", limit: "Spec" };
  const DIGITS = 4; // shown of a figure that was worked out

  const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
  const marked = (text) => (baytreeTrade.mark === "comma" ? text.replace(".", ",") : text);
  const listed = (texts) => texts.join(", ");

  // Fields

  function fieldsOf(row) {
    const unit = row.readings[0].unit;
    const figures = (row.figure || []).map((name) => ({ name, label: FIGURES[name], unit, low: "0" }));
    const readings = row.readings.map((one) => ({
      ...one, label: one.name ? sentence(one.name) : "Reading" }));
    return [...figures, ...readings];
  }

  function field(step, one, at) {
    const id = `read-${step}-${at}`;
    const wrong = element("p", { id: `${id}-wrong`, class: "wrong", hidden: "" });
    const box = one.phrases ? choice(id, one) : entry(id, one);
    return element("div", { class: "field" },
      element("label", { for: id }, one.label), box, wrong);
  }

  function choice(id, one) {
    const options = ["", ...one.phrases].map((text) => element("option", {}, text));
    return element("select", { id, name: one.name, "aria-describedby": `${id}-wrong` }, ...options);
  }

  // A phone's pad of figures has no minus, so it is asked for only where none is needed.
  function entry(id, one) {
    const box = element("input", { id, name: one.name, type: "text", autocomplete: "off",
      autocapitalize: "off", spellcheck: "false", maxlength: "40", "aria-describedby": `${id}-wrong` });
    if (!one.low.startsWith("-")) box.inputMode = "decimal";
    const units = [one.unit, ...ofKind(one.unit).filter((unit) => unit !== one.unit)];
    const beside = units.length === 1 ? element("span", { class: "unit" }, sign(one.unit))
      : element("select", { "aria-label": `Unit of: ${one.label}` },
        ...units.map((unit) => element("option", { value: unit }, sign(unit))));
    return element("div", { class: "value" }, box, beside);
  }

  function text(box) {
    const beside = box.parentElement.querySelector("select");
    return withUnit(box.value, beside === box ? "" : beside?.value).trim();
  }

  // What is said

  const wayOf = (ways, at) => ways.children[at];

  function lead(ways, at) {
    const way = ways.children[at].querySelector(".way");
    const number = way.querySelector(".way-number");
    const where = way.querySelector(".way-to").textContent.replace(/\s+/g, " ").trim();
    const words = number ? `Go to step ${where.replace(/^[0-9]+/, "$&,")}` : sentence(where);
    return way.href ? element("a", { href: way.getAttribute("href"), class: "way-link" }, words)
      : element("span", {}, words);
  }

  function said(ways, at) {
    const means = ways.children[at].querySelector(".way-means");
    const range = ways.children[at].querySelector(".way-said b").textContent;
    return means ? `${range}, ${means.textContent}` : range;
  }

  // Where something was worked out it is said; what was typed stands in its field.
  function figures(row, values) {
    const worked = row.computed.filter((one) => values[one.name]);
    const rows = worked.length ? worked : row.readings.filter((one) => one.name in values);
    return listed(rows.map((one) => `${one.name} ${figure(one, values[one.name])}`.trim()));
  }

  function figure(one, value) {
    if (one.phrases) return one.phrases[Number(value)];
    if (value === "Infinity") return "OL";
    return marked(written(one.form ? rounded(read(value), DIGITS) : value, one.unit).trim());
  }

  function sayDecided(row, ways, found) {
    const [at] = found.fits;
    return [element("p", {}, element("b", {}, figures(row, found.values)),
      `: ${said(ways, at)}. `, lead(ways, at))];
  }

  function sayTooClose(row, ways, found) {
    const open = found.fits.map((at) => `${said(ways, at)} (${place(ways, at)})`);
    return [element("p", {}, element("b", {}, `${figures(row, found.values)}: too close to call. `),
      `${open.join(" or ")}. ${accuracy(row, found.errors)}. Use a finer range and reread.`)];
  }

  function place(ways, at) {
    const number = ways.children[at].querySelector(".way-number");
    return number ? `step ${number.textContent}` : "another tree";
  }

  // "Multimeter: ±23 mV at plus, ±21 mV at ground". A tool is named once.
  function accuracy(row, errors) {
    const units = Object.fromEntries(row.readings.map((one) => [one.name, one.unit]));
    const byTool = {};
    for (const [name, [tool, error]] of Object.entries(errors)) {
      const off = `±${marked(written(rounded(read(error), 2, "up"), units[name]))}`;
      (byTool[tool] ||= []).push(name ? `${off} at ${name}` : off);
    }
    return Object.entries(byTool).map(([tool, all]) => `${tool}: ${listed(all)}`).join("; ");
  }

  function sayWaiting(row, ways, found, missing) {
    const open = found.fits.length < row.results.length
      ? ` Still possible: ${listed(found.fits.map((at) => said(ways, at)))}.` : "";
    return [element("p", {}, `Enter: ${missing.join("; ")}.${open}`)];
  }

  const sayNoResult = (row, ways, found) => [element("p", { class: "wrong" },
    `${figures(row, found.values)}: no result matches.`)];

  const SAY = {
    decided: sayDecided, "too close to say": sayTooClose, "more to be typed": sayWaiting,
    "no result": sayNoResult,
  };
  const MARKS = { decided: "match", "too close to say": "possible" };

  function markRows(ways, found) {
    [...ways.children].forEach((row, at) => {
      row.querySelectorAll(".fit").forEach((old) => old.remove());
      const fits = MARKS[found.state] && found.fits.includes(at);
      row.firstElementChild.classList.toggle("fits", Boolean(fits));
      if (fits) row.querySelector(".way-said").append(
        element("span", { class: "fit" }, " ", element("span", { class: "mark" }, MARKS[found.state])));
    });
  }

  function attach(id, row) {
    const card = document.getElementById(`step-${id}`);
    const ways = card && card.querySelector("ol.ways");
    if (!ways) return;
    const fields = fieldsOf(row);
    const answer = element("output", { class: "answer", "aria-live": "polite" });
    const form = element("form", { class: "readings", autocomplete: "off" },
      element("div", { class: "fields" }, ...fields.map((one, at) => field(id, one, at))), answer);
    const boxes = fields.map((one, at) => form.querySelector(`[id="read-${CSS.escape(id)}-${at}"]`));
    let before = "";

    // Leaving a field to press the link must not take the link away: the same is not said again.
    function show() {
      const typed = Object.fromEntries(boxes.map((box) => [box.name, text(box)]));
      const now = JSON.stringify(typed);
      if (now === before) return;
      before = now;
      const found = follow(table, id, typed);
      for (const box of boxes) showMistake(box, found.mistakes[box.name]);
      markRows(ways, found);
      const missing = fields.filter((one) => !typed[one.name]).map((one) => one.label.toLowerCase());
      answer.replaceChildren(...(SAY[found.state] ? SAY[found.state](row, ways, found, missing) : []));
    }

    answerAsTyped(form, show);
    ways.before(form);
  }

  for (const [id, row] of Object.entries(table.steps)) attach(id, row);
})();
