/* What a walk has asked for before a step, filled in: parts of builder/walk/forward and to_fill.
 *
 * In: the tables, a state, an event `fill`. Out: `baytreeFill`: the state with the value as it's kept,
 * or `{ refused }`. Loaded where a walk asks.
 */
"use strict";
globalThis.baytreeFill = (() => {
  const { less, rounded } = baytreeExact;
  const { typed: typedQuantity, convert } = baytreeQuantities;
  const { top, withTop, tableOf, withItem } = baytreeTold;
  const { asksAt, answersOfCodes, DTC } = baytreeSpecs;

  function fill(tables, state, { name, value: typed, source = "" }) {
    const value = checked(asksAt(tables, state).find((one) => one.name === name), typed);
    if (value.refused) return value;
    const { inside, filled } = top(state);
    if (typeof value === "string" && Object.hasOwn(tableOf(tables, inside).asks || {}, name)) {
      return withTop(state, { filled: { ...filled, [name]: value } });
    }
    return withItem(tables, { ...state, filled: { ...state.filled, [name]: value },
      sources: { ...state.sources, [name]: source } });
  }

  // A value as it's kept, or why it isn't one that was asked for.
  function checked(ask, value) {
    const { name, one_of, list = false } = ask, isText = typeof value === "string";
    const refuse = (words) => ({ refused: `\`${name}\`${words}` });
    if (isText === list) return refuse(` is ${list ? "a list" : "one value"}`);
    if (ask.limits) return limitsOf(ask, [value].flat(), (words) => ({ refused: `${ask.ask}${words}` }));
    if (isText && value && one_of.length && !one_of.includes(value)) {
      const answers = answersOfCodes(ask.codes || {}, value);
      if (answers.length === 1) return answers[0];
      if (answers.length) return { refused: `those DTCs stand for ${answers.join(" and ")}: choose one` };
      if (one_of.includes("other") && value.toUpperCase().search(DTC) < 0) return value; // by its own name
      return { refused: `\`${value}\` isn't one of: ${one_of.join(", ")}` };
    }
    return value.length ? value : refuse(" is empty");
  }

  // The limits of a spec in its unit, as exact decimals.
  function limitsOf({ limits: names, unit, list }, typed, refuse) {
    if (typed.length !== names.length) return refuse(` needs: ${names.join(", ")}`);
    const limits = [];
    for (const text of typed) {
      const quantity = typedQuantity(text, unit);
      if (!quantity.value) return refuse(`: ${quantity.mistake || "no number"}`);
      limits.push(convert(quantity.value, quantity.unit, unit));
    }
    if (limits.length > 1 && less(limits[1], limits[0])) return refuse(": the highest is below the lowest");
    const digits = limits.map((limit) => rounded(limit));
    return list ? digits : digits[0];
  }

  return { fill };
})();
