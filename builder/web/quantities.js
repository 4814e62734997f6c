/* A reading as people type it: builder/trade/quantities in the page, word for word.
 *
 * In: "5,1 V", "350 mV", "OL", and the units of `trade-data.js`. Out: `baytreeQuantities`; a value
 * in the unit it was typed in, or a mistake in words.
 */
"use strict";
globalThis.baytreeQuantities = (() => {
  const { read, add, subtract, multiply, divide } = baytreeExact;
  const { list, aliases } = baytreeTrade.units;
  const BLANK = "[ \\u00a0\\u202f]";
  const READING = new RegExp(
    `^([-+]?)\\s*([0-9]{1,3}(?:${BLANK}[0-9]{3})+(?![0-9])|[0-9]+)?([.,][0-9]+)?[.]?\\s*(.*)$`, "u");
  const OVER = /^(?:([-+]?)\s*[.]?[O0][.]?L[.]?\s*(.*)|∞\s*(.*))$/iu;

  function unit(text) {
    const name = text.normalize("NFKC").split(/\s+/).filter(Boolean).join(" ");
    const symbol = Object.hasOwn(list, name) ? name : Object.hasOwn(aliases, name) ? aliases[name] : "";
    if (!symbol) return null;
    const [kind, factor, offset, sign] = list[symbol];
    return { symbol, kind, factor: read(factor), offset: read(offset), sign };
  }

  // Names that differ in nothing but capitals; what only sounds similar is not guessed here.
  function nearest(text) {
    const wanted = text.trim().toLowerCase();
    const near = [...Object.keys(list), ...Object.keys(aliases)]
      .filter((name) => name.toLowerCase() === wanted);
    return [...new Set(near.map((name) => aliases[name] || name))].slice(0, 3);
  }

  // {value, unit} as typed, {over, unit}, or {mistake}; see typed_quantity in Python.
  function typed(text, wanted = "") {
    const shown = text.trim();
    const given = shown.replace(/[−–‒]/g, "-");
    const over = OVER.exec(given);
    if (over) return overRange(over, wanted);
    const found = READING.exec(given);
    if (!found || !(found[2] || found[3])) {
      return { mistake: shown ? `${shown} is no reading: a number comes first, as in 12.6` : "no reading yet: type a number, as in 12.6" };
    }
    const [, sign, whole = "", part = "", rest] = found;
    const wrong = numberMistake(given, whole, part, rest);
    if (wrong) return { mistake: wrong };
    const symbol = unitOf(rest, wanted);
    if (symbol.mistake) return symbol;
    const digits = `${sign === "-" ? "-" : ""}${whole.replace(/[^0-9]/g, "") || "0"}${part.replace(",", ".")}`;
    return kindMistake(symbol.unit, wanted) || { value: read(digits), unit: symbol.unit };
  }

  function numberMistake(given, whole, part, rest) {
    if (!unit(rest) && /[0-9]/.test(rest) && !/^[eE]/.test(rest)) {
      return `${given}: two numbers; enter one reading at a time`;
    }
    if (/^[eE][-+]?[0-9]/.test(rest)) {
      return `${given}: write the number out, or use a larger unit`;
    }
    if (part.startsWith(",") && part.length === 4 && !whole.startsWith("0")) {
      const digits = part.slice(1);
      return `${whole}${part} can be read two ways: type ${whole}.${digits} or ${whole}${digits}`;
    }
    return "";
  }

  function unitOf(text, wanted) {
    if (!text) {
      return wanted ? { unit: wanted }
        : { mistake: "the unit is missing: write it after the number, as in 12.6 V" };
    }
    const known = unit(text);
    if (known) return { unit: known.symbol };
    const near = nearest(text);
    const hint = (near.length ? `; did you mean ${near.join(" or ")}` : "")
      + (wanted ? `; this reading is wanted in ${wanted}` : "");
    return { mistake: `${text} is no unit in use here${hint}` };
  }

  function overRange(found, wanted) {
    if (found[1] === "-") {
      return { mistake: "over the range below zero: swap the leads or raise the range" };
    }
    const symbol = unitOf(found[2] || found[3] || "", wanted);
    if (symbol.mistake) return symbol;
    return kindMistake(symbol.unit, wanted) || { over: true, unit: symbol.unit };
  }

  function kindMistake(given, wanted) {
    if (!wanted || sameKind(given, wanted)) return null;
    return { mistake: `${given} measures ${unit(given).kind}; this reading is wanted in ${wanted}` };
  }

  function sameKind(one, other) {
    const first = unit(one), second = unit(other);
    return Boolean(first && second && first.kind === second.kind);
  }

  function convert(value, given, wanted) {
    const source = unit(given), target = unit(wanted);
    const base = add(multiply(value, source.factor), source.offset);
    return divide(subtract(base, target.offset), target.factor);
  }

  const sign = (symbol) => (unit(symbol) || { sign: symbol }).sign;
  const written = (digits, symbol) => `${digits.replace("-", "−")} ${sign(symbol)}`;
  const ofKind = (symbol) => Object.keys(list).filter((one) => sameKind(one, symbol));

  // A figure alone takes the unit chosen beside it; a unit that was typed counts.
  function withUnit(given, wanted) {
    const text = given.trim();
    return wanted && /[0-9.,]$/.test(text) ? `${text} ${wanted}` : given;
  }

  return { unit, typed, sameKind, convert, written, sign, ofKind, withUnit };
})();
