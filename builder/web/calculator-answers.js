/* The calculators: builder/trade/calculators and lookups in the page.
 *
 * In: the text entered beside each field, and the tables of `calculator-data.js`. Out:
 * `baytreeCalculators`, an answer {lines: [{label, text, exact}], mistakes: {field: words}}, word for
 * word as in Python.
 */
"use strict";
globalThis.baytreeCalculators = (() => {
  const { read, less, size, rounded } = baytreeExact;
  const { run } = baytreeExpressions;
  const { unit, typed: typedQuantity, convert, written, sign, ofKind } = baytreeQuantities;
  const data = baytreeTrade.calculators;
  const line = (label, text, exact = "") => ({ label, text, exact });
  const lines = (...all) => ({ lines: all, mistakes: {} });
  const mistake = (field, words) => ({ lines: [], mistakes: { [field]: words } });
  const hex = (number, digits = 2) => number.toString(16).toUpperCase().padStart(digits, "0");

  function numberLine(label, value, symbol, digits) {
    return line(label, written(rounded(value, digits), symbol), `${rounded(value)} ${sign(symbol)}`);
  }

  // The unit that people would use for a value; zero stays as it is.
  function scaled(value, symbol) {
    const scale = data.scales.find((one) => one.includes(symbol));
    if (!scale || value[0] === 0n) return [value, symbol];
    const ways = scale.map((other) => [convert(value, symbol, other), other]);
    return ways.find((way) => less(size(way[0]), read(data.switch))) || ways[ways.length - 1];
  }

  // Calculators that are formulas

  function calculate(of, entries) {
    const values = {}, mistakes = {};
    for (const field of of.fields) {
      const text = entries[field.name] || "";
      if (!text.trim()) continue;
      const found = fieldValue(field, text);
      if (found.mistake) mistakes[field.name] = found.mistake;
      else values[field.name] = found.value;
    }
    if (Object.keys(mistakes).length) return { lines: [], mistakes };
    const outputs = of.outputs.filter((output) => output.needs.every((name) => values[name])
      && !output.without.some((name) => values[name]));
    const found = outputs.map((output) => run(output.form, values));
    const nothing = !outputs.length && Object.keys(values).length === of.fields.length;
    if (nothing || found.includes(null)) return mistake("", of.cannot);
    return lines(...outputs.map(
      (output, at) => numberLine(output.label, ...scaled(found[at], output.unit), output.digits)));
  }

  function fieldValue(field, text) {
    if (Object.keys(field.choices).length) {
      return Object.hasOwn(field.choices, text) ? { value: read(field.choices[text]) }
        : { mistake: `${text} is not in the list` };
    }
    const found = typedQuantity(text, field.unit);
    if (found.mistake) return found;
    if (found.over) return { mistake: data.overTheRange };
    const value = read(rounded(convert(found.value, found.unit, field.unit)));
    if (field.low !== null && less(value, read(field.low))) {
      const least = written(field.low, field.unit);
      return { mistake: `${field.label.toLowerCase()} below ${least} makes no sense here` };
    }
    return { value };
  }

  // Lookups

  function bus({ ohms }) {
    const found = typedQuantity(ohms, "ohm");
    if (found.mistake) return mistake("ohms", found.mistake);
    const states = data.bus.states;
    if (found.over) return lines(line("Shows", states[states.length - 1][0]));
    const value = convert(found.value, found.unit, "ohm");
    if (less(value, read("0"))) return mistake("ohms", data.bus.below);
    const matches = states.filter(([, low, high]) => !less(value, read(low))
      && (high === null || !less(read(high), value)));
    const names = matches.map(([name]) => name);
    return lines(line("Shows", names.join(data.bus.either) || data.bus.none));
  }

  function units({ reading }) {
    const found = typedQuantity(reading);
    if (found.mistake || found.over) return mistake("reading", found.mistake || data.overTheRange);
    const others = ofKind(found.unit).filter((symbol) => symbol !== found.unit);
    if (!others.length) return lines(line("", `${sign(found.unit)} has no other unit`));
    const [least, most] = data.handy.map(read);
    const values = others.map((symbol) => [convert(found.value, found.unit, symbol), symbol]);
    const handy = values.filter(
      ([value]) => !less(size(value), least) && less(size(value), most));
    return lines(...(handy.length ? handy : values).map(
      (pair) => numberLine("", ...pair, data.unitDigits)));
  }

  const SHAPE = /^([PCBU])([0-3])([0-9A-F]{3})(?:[-: ]?([0-9A-F]{2}))?$/;

  function code({ code: text }) {
    const typed = text.toUpperCase();
    const found = SHAPE.exec(typed);
    if (!found) return mistake("code", codeMistake(typed, text));
    const { letters, systems, owners } = data.codes;
    const [, letter, second, digits, third] = found;
    const number = letters.indexOf(letter) << 14 | Number(second) << 12 | parseInt(digits, 16);
    const byMaker = data.codes.makers.some(([low, high]) => low <= number && number <= high);
    const bytes = [number >> 8, number & 0xff, ...(third ? [parseInt(third, 16)] : [])];
    return lines(
      line("DTC", codeText(found)), line("System", systems[letter]),
      line("Defined by", owners[byMaker ? "maker" : "standard"]),
      line("Bytes on the network", bytes.map((byte) => hex(byte)).join(" ")),
      ...(third ? failureType(parseInt(third, 16)) : []));
  }

  const codeText = ([, letter, second, digits, third]) =>
    letter + second + digits + (third ? `-${third}` : "");

  function failureType(number) {
    const { categories, failureTypes, setupSteps } = data.codes;
    const kind = categories[number >> 4 || number & 0xf] || "reserved";
    const words = failureTypes[number] || "not in our list";
    const found = [line("Failure type", `${hex(number)}, ${words}; kind: ${kind}`)];
    return setupSteps[number] ? [...found, line("Missing setup step", setupSteps[number])] : found;
  }

  function codeMistake(typed, text) {
    const { lookAlikes } = data.codes;
    const likelyText = typed.slice(0, 1)
      + [...typed.slice(1)].map((one) => lookAlikes[one] || one).join("");
    const likely = SHAPE.exec(likelyText);
    if (likely) {
      const at = [...typed].findIndex((one, i) => one !== likelyText[i]);
      return `${text} has the letter ${typed[at]} where a digit belongs; did you mean ${codeText(likely)}?`;
    }
    if (!data.codes.systems[typed[0]]) return `a code starts with P, C, B or U, not with ${typed[0]}`;
    if (/^[PCBU][0-9A-F]{3}$/.test(typed)) {
      return `${text} is too short: a letter and four characters, as in P0562; did you mean ${typed[0]}0${typed.slice(1)}?`;
    }
    if (typed.length > 1 && !"0123".includes(typed[1])) {
      return `the second character of a code is 0, 1, 2 or 3, not ${typed[1]}`;
    }
    const odd = [...typed.slice(2, 5)].find((one) => !/[0-9A-F]/.test(one));
    if (odd) return `${odd} is no hexadecimal digit; the last three are 0 to 9 or A to F`;
    if (typed.length < 5) return `${text} is too short: a letter and four characters, as in P0562`;
    return `${text.slice(5)} is no failure type: two hexadecimal digits, as in P0562-16`;
  }

  function vin({ vin: text, class: of }) {
    const know = data.vin;
    const typed = text.replace(/[\s-]/g, "").toUpperCase();
    const wrong = characterMistake(typed, know);
    if (wrong) return mistake("vin", wrong);
    if (typed.length !== 17) {
      return mistake("vin", `a VIN has 17 characters; you entered ${typed.length}`);
    }
    const total = [...typed].reduce((sum, one, at) => sum + know.values[one] * know.weights[at], 0);
    const digit = "0123456789X"[total % 11];
    const right = digit === typed[8];
    const year = know.yearCodes.indexOf(typed[9]);
    return lines(
      line("VIN", typed),
      right ? line("Check digit", `${digit}, matches`) : line("Recheck",
        `check digit in position 9 is ${typed[8]}, calculated ${digit}: check your entry, or non-US`),
      year < 0 ? line("Recheck", `${typed[9]} in position 10 is no model year`)
        : line("Model year", modelYears(typed, know, year, of).join(" or ")));
  }

  function modelYears(typed, know, at, of) {
    const early = know.firstYear + at;
    if (of !== know.light) return [early, early + know.cycle];
    return [/[0-9]/.test(typed[6]) ? early : early + know.cycle];
  }

  function characterMistake(typed, know) {
    const at = [...typed].findIndex((one) => !Object.hasOwn(know.values, one));
    if (at < 0) return "";
    const odd = typed[at], meant = know.lookAlikes[odd];
    if (!meant) return `${odd} in position ${at + 1} is never used in a VIN`;
    const likely = [...typed].map((one) => know.lookAlikes[one] || one).join("");
    return `position ${at + 1} is the letter ${odd}, which is never used; is it ${meant}? Did you mean ${likely}?`;
  }

  function refusal({ refusal: text }) {
    const { list, ranges, next } = data.refusals;
    const bare = (name) => name.toLowerCase().replace(/[^0-9a-z]/g, "");
    const typed = bare(text);
    const named = typed && Object.keys(list).find(
      (one) => [list[one][0], list[one][3]].some((name) => bare(name) === typed));
    const found = /^7f[0-9a-f]{2}([0-9a-f]{2})$/.exec(typed) || /^(?:0x)?([0-9a-f]{2})$/.exec(typed);
    if (!named && !found) {
      return mistake("refusal", /^7f[0-9a-f]{2}$/.test(typed)
        ? `${text} is cut short: the reason is the third byte, as in 7F 31 22`
        : `${text} is no refusal: type 7F 31 22, or 22, or its name`);
    }
    const number = named ? Number(named) : parseInt(found[1], 16);
    const range = ranges.find(([low, high]) => low <= number && number <= high);
    if (!list[number] && !range) {
      return mistake("refusal", `${hex(number)} is no refusal of the standard; record it as shown`);
    }
    const [name, kind, means] = list[number] || ["", range[2], range[3]];
    return lines(line("Refusal", name ? `${hex(number)}, ${name}` : hex(number)),
      line("Means", means), line("Next", next[kind]));
  }

  const LOOKUPS = { bus, units, dtc: code, vin, refusal };

  function answer(id, entries) {
    if (!LOOKUPS[id]) return calculate(data.formulas[id], entries);
    const stripped = Object.fromEntries(
      Object.entries(entries).map(([name, text]) => [name, text.trim()]));
    return stripped[data.lookupFields[id]] ? LOOKUPS[id](stripped) : lines();
  }

  return { answer };
})();
