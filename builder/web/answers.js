/* The sums and look-ups of the bench page: builder/trade/sums and look_ups in the page.
 *
 * In: what was typed beside each field, and the tables of `trade-data.js`. Out: `baytreeAnswers`,
 * an answer {lines: [{label, text, exact}], mistakes: {field: words}}, word for word as in Python.
 */
"use strict";
globalThis.baytreeAnswers = (() => {
  const { read, less, size, run, rounded } = baytreeExact;
  const { unit, typed: typedQuantity, convert, written, sign, ofKind } = baytreeQuantities;
  const data = baytreeTrade.bench;
  const line = (label, text, exact = "") => ({ label, text, exact });
  const lines = (...all) => ({ lines: all, mistakes: {} });
  const mistake = (field, words) => ({ lines: [], mistakes: { [field]: words } });
  const hex = (number, digits = 2) => number.toString(16).toUpperCase().padStart(digits, "0");

  function numberLine(label, value, symbol, digits) {
    return line(label, written(rounded(value, digits), symbol), `${rounded(value)} ${sign(symbol)}`);
  }

  // The unit of a family that people would say it in; zero stays as it is.
  function scaled(value, symbol) {
    const scale = data.scales.find((one) => one.includes(symbol));
    if (!scale || value[0] === 0n) return [value, symbol];
    const ways = scale.map((other) => [convert(value, symbol, other), other]);
    return ways.find((way) => less(size(way[0]), read(data.switch))) || ways[ways.length - 1];
  }

  // Sums that are formulae

  function workedOut(of, typed) {
    const values = {}, mistakes = {};
    for (const field of of.fields) {
      const text = typed[field.name] || "";
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

  // Look-ups

  function bus({ ohms }) {
    const found = typedQuantity(ohms, "ohm");
    if (found.mistake) return mistake("ohms", found.mistake);
    const states = data.bus.states;
    if (found.over) return lines(line("This shows", states[states.length - 1][0]));
    const value = convert(found.value, found.unit, "ohm");
    if (less(value, read("0"))) return mistake("ohms", data.bus.below);
    const matches = states.filter(([, low, high]) => !less(value, read(low))
      && (high === null || !less(read(high), value)));
    const names = matches.map(([name]) => name);
    return lines(line("This shows", names.join(data.bus.either) || data.bus.none));
  }

  function units({ reading }) {
    const found = typedQuantity(reading);
    if (found.mistake || found.over) return mistake("reading", found.mistake || data.overTheRange);
    const others = ofKind(found.unit).filter((symbol) => symbol !== found.unit);
    if (!others.length) return lines(line("", `${sign(found.unit)} stands alone`));
    const [least, most] = data.plain.map(read);
    const values = others.map((symbol) => [convert(found.value, found.unit, symbol), symbol]);
    const plain = values.filter(
      ([value]) => !less(size(value), least) && less(size(value), most));
    return lines(...(plain.length ? plain : values).map(
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
      line("Code", codeText(found)), line("System", systems[letter]),
      line("Meaning given by", owners[byMaker ? "maker" : "standard"]),
      line("On the network", bytes.map((byte) => hex(byte)).join(" ")),
      ...(third ? failureType(parseInt(third, 16)) : []));
  }

  const codeText = ([, letter, second, digits, third]) =>
    `${letter}${second}${digits}${third ? `-${third}` : ""}`;

  function failureType(number) {
    const { categories, failureTypes, setUp } = data.codes;
    const kind = categories[number >> 4 || number & 0xf] || "reserved";
    const words = failureTypes[number] || "not in our list";
    const found = [line("Failure type", `${hex(number)}, ${words}; kind: ${kind}`)];
    return setUp[number] ? [...found, line("Set-up step missing", setUp[number])] : found;
  }

  function codeMistake(typed, text) {
    const { lookAlikes } = data.codes;
    const mended = typed.slice(0, 1)
      + [...typed.slice(1)].map((one) => lookAlikes[one] || one).join("");
    const likely = SHAPE.exec(mended);
    if (likely) {
      const at = [...typed].findIndex((one, i) => one !== mended[i]);
      return `${text} has the letter ${typed[at]} where a digit belongs; did you mean ${codeText(likely)}?`;
    }
    if (!data.codes.systems[typed[0]]) return `a code starts with P, C, B or U, not with ${typed[0]}`;
    if (typed.length > 1 && !"0123".includes(typed[1])) {
      return `the second character of a code is 0, 1, 2 or 3, not ${typed[1]}`;
    }
    const odd = [...typed.slice(2, 5)].find((one) => !/[0-9A-F]/.test(one));
    if (odd) return `${odd} is no hexadecimal digit; the last three are 0 to 9 or A to F`;
    if (typed.length < 5) return `${text} is too short: a letter and four characters, as in P0562`;
    return `${text.slice(5)} is no failure type: two hexadecimal digits, as in P0562-16`;
  }

  function vehicleNumber({ number, class: of }) {
    const know = data.vehicleNumbers;
    const typed = number.replace(/[\s-]/g, "").toUpperCase();
    const wrong = signMistake(typed, know);
    if (wrong) return mistake("number", wrong);
    if (typed.length !== 17) {
      return mistake("number", `a vehicle number has 17 signs, here are ${typed.length}`);
    }
    const total = [...typed].reduce((sum, one, at) => sum + know.values[one] * know.weights[at], 0);
    const digit = "0123456789X"[total % 11];
    const right = digit === typed[8];
    const year = know.yearCodes.indexOf(typed[9]);
    return lines(
      line("Vehicle number", typed),
      right ? line("Check digit", `${digit}, right`) : line("Look again",
        `check digit in position 9 is ${typed[8]}, worked out ${digit}: typed wrong, or not US`),
      year < 0 ? line("Look again", `${typed[9]} in position 10 is no model year`)
        : line("Model year", modelYears(typed, know, year, of).join(" or ")));
  }

  function modelYears(typed, know, at, of) {
    const early = know.firstYear + at;
    if (of !== know.light) return [early, early + know.cycle];
    return [/[0-9]/.test(typed[6]) ? early : early + know.cycle];
  }

  function signMistake(typed, know) {
    const at = [...typed].findIndex((one) => !Object.hasOwn(know.values, one));
    if (at < 0) return "";
    const odd = typed[at], meant = know.lookAlikes[odd];
    if (!meant) return `${odd} in position ${at + 1} never occurs in a vehicle number`;
    const likely = [...typed].map((one) => know.lookAlikes[one] || one).join("");
    return `position ${at + 1} is the letter ${odd}, which is never used; ${meant}? Perhaps ${likely}.`;
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
      line("It means", means), line("Do this", next[kind]));
  }

  const LOOK_UPS = { bus, units, code, "vehicle-number": vehicleNumber, refusal };

  function answer(id, typed) {
    if (!LOOK_UPS[id]) return workedOut(data.sums[id], typed);
    const stripped = Object.fromEntries(
      Object.entries(typed).map(([name, text]) => [name, text.trim()]));
    return stripped[data.fieldOf[id]] ? LOOK_UPS[id](stripped) : lines();
  }

  return { answer };
})();
