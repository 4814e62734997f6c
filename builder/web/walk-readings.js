/* Readings on a walk: the fields, the pad, and what the readings prove so far.
 *
 * In: the walk, the row of a check. Out: `baytreeReadings`: elements, and the verdict. What is typed
 * stands in `walk.view.typed` by the name of the reading, its unit in `walk.view.units`.
 */
"use strict";
globalThis.baytreeReadings = (() => {
  const { readAs } = baytreeFollow;
  const { h, button, textBox } = baytreeParts;
  const { capital, figure, rangeWords, marked } = baytreeWords;
  const { ofKind, sign, written, withUnit } = baytreeQuantities;
  const { read, rounded } = baytreeExact;
  const { isEmpty } = baytreeAnswers;
  const { isNothing, NOTHING_SHOWN } = baytreeMeasured;
  const SPECS = { from: "Spec, low", to: "Spec, high", limit: "Spec" };

  function fieldsOf(row) {
    const unit = row.readings[0]?.unit;
    const figures = (row.figure || []).map((name) => ({ name, label: SPECS[name], unit, low: "0" }));
    const plain = row.readings.length > 1 || figures.length;
    return [...figures, ...row.readings.map((one) => (
      { ...one, label: one.name ? capital(one.name) : "Reading", labeled: plain || one.name }))];
  }

  // Fields

  const fields = (walk) => h("div", { class: "w-fields" }, fieldsOf(walk.row).map((one, at) => field(walk, one, at)));

  function field(walk, reading, at) {
    const id = `w-read-${at}`, inside = reading.phrases ? choices(walk, reading, id) : entry(walk, reading, id);
    return h("div", { class: `w-field${reading.labeled || reading.label !== "Reading" ? "" : " alone"}` },
      h(reading.phrases ? "span" : "label", { id: `${id}-label`, for: !reading.phrases && id }, reading.label), inside);
  }

  function choices(walk, { name, phrases }, id) {
    const press = (phrase) => { walk.view.typed[name] = phrase; walk.redraw(); };
    return h("div", { class: "w-choices", role: "group", "aria-labelledby": `${id}-label` },
      phrases.map((phrase, at) => button(phrase, () => press(phrase), { "data-reading": name,
        "data-choice": String(at), "aria-pressed": String(walk.view.typed[name] === phrase) })));
  }

  // The phone's own keyboard would cover the check: the pad stands in its place.
  function entry(walk, { name, unit }, id) {
    const box = textBox(id, { inputmode: "none", autocapitalize: "off", spellcheck: "false", maxlength: "40",
      "data-reading": name, value: walk.view.typed[name] || "", enter: walk.confirm, press: walk.pad,
      typed: ({ value }) => { walk.view.typed[name] = value; walk.verdict(); } });
    return h("div", { class: "w-value" }, box, unitChoice(walk, name, unit));
  }

  function unitChoice(walk, name, unit) {
    const units = [unit, ...ofKind(unit).filter((one) => one !== unit)];
    if (units.length === 1) return h("span", { class: "w-unit" }, sign(unit));
    return h("select", { "aria-label": "Unit", changed: ({ value }) => { walk.view.units[name] = value; walk.verdict(); } },
      units.map((one) => h("option", { value: one, selected: one === (walk.view.units[name] || unit) }, sign(one))));
  }

  // What was typed, by name; a figure alone takes the unit beside it.
  function typedIn({ units, typed }, row) {
    return Object.fromEntries(fieldsOf(row).map(({ name, unit, phrases }) => {
      const text = (typed[name] || "").trim();
      return [name, phrases || isNothing(text) ? text : withUnit(text, units[name] || unit).trim()];
    }).filter(([, text]) => text));
  }

  // The pad

  const KEYS = ["7", "8", "9", "⌫", "4", "5", "6", "OL", "1", "2", "3", "Nothing shown", "±", "0", ".", "Close"];
  const NAMES = { "⌫": "Delete", "±": "Plus or minus", ".": "Decimal point" };

  function pad(walk, box) {
    return h("div", { class: "w-pad", role: "group", "aria-label": "Keys" },
      KEYS.map((key) => button(key === "." ? marked(".") : key, () => press(walk, box, key), { "aria-label": NAMES[key] })));
  }

  function press(walk, box, key) {
    const text = box.value, number = /^[-0-9.,]*$/.test(text) ? text : "";
    if (key === "Close") { walk.pad(null); return; }
    if (key === "⌫") box.value = number.slice(0, -1);
    else if (key === "±") box.value = text.startsWith("-") ? text.slice(1) : `-${number}`;
    else if (key === "OL") box.value = "OL";
    else if (key === "Nothing shown") box.value = NOTHING_SHOWN;
    else box.value = number + (key === "." ? marked(".") : key);
    box.dispatchEvent(new Event("input"));
    box.focus();
  }

  // The verdict

  // {state, fits, line, next}: what the readings so far prove, and in which words.
  function verdict({ view, row, tools }) {
    const typed = typedIn(view, row), all = row.results.map((_, at) => at);
    if (!Object.keys(typed).length) return { state: "empty", fits: all };
    if (Object.values(typed).some(isNothing)) return { typed, ...nothingShown(row) };
    const outcome = readAs(row, tools, typed);
    return { typed, fits: outcome.fits, state: outcome.state, line: LINES[outcome.state](row, outcome, typed) };
  }

  function nothingShown(row) {
    const at = row.results.findIndex((_, one) => isEmpty(row, one));
    return at < 0 ? { state: "no result", fits: [], line: "No result here is “nothing shown”: check the leads" }
      : { state: "decided", fits: [at], line: `Nothing shown: ${row.results[at].text}` };
  }

  const LINES = {
    invalid: (row, { mistakes }) => capital(Object.values(mistakes)[0]),
    incomplete: (row, outcome, typed) => `Still to be read: ${fieldsOf(row)
      .filter(({ name }) => !typed[name]).map(({ label }) => label.toLowerCase()).join(", ")}`,
    "no result": (row, outcome) => `${figures(row, outcome)}: no result covers that`,
    "too close to call": (row, outcome) => (
      `Too close to call: ${figures(row, outcome)} ${accuracy(row, outcome)}. Measure again`),
    decided: (row, outcome) => {
      const result = row.results[outcome.fits[0]], range = rangeWords(row, result);
      const single = row.readings.length === 1 && !row.computed.length && !row.readings[0].phrases;
      return [`${figures(row, outcome)}${single ? isWords(result, range) : ": "}${range}`, result.means].filter(Boolean).join(": ");
    },
  };

  // "12.6 V is within 12.2 to 13.2 V", "0.3 V is within spec, 0.5 V or less", "9 V is below 9.6 V".
  function isWords({ text }, range) {
    if (text === "within spec" && range !== text) return " is within spec, ";
    return /^\S+ to /.test(range) ? " is within " : " is ";
  }

  // Calculated values if there are any, else those that were typed.
  function figures(row, { values }) {
    const computed = row.computed.filter(({ name }) => values[name]);
    const rows = computed.length ? computed : row.readings.filter(({ name }) => name in values);
    return rows.map((one) => `${one.name} ${shownValue(one, values[one.name])}`.trim()).join(", ");
  }

  function shownValue({ phrases, form, unit }, value) {
    if (phrases) return phrases[Number(value)];
    if (value === "Infinity") return "OL";
    return figure(form ? rounded(read(value), 4) : value, unit);
  }

  function accuracy(row, { errors }) {
    const [first] = Object.entries(errors);
    if (!first) return "";
    const { unit } = row.readings.find(({ name }) => name === first[0]) || {};
    return `± ${marked(written(rounded(read(first[1][1]), 2, "up"), unit || "")).trim()}`;
  }

  return { fields, pad, verdict };
})();
