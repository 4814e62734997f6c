/* A query taken apart: codes, vehicle, words.
 *
 * In: what was typed, and the index. Out: codes, a vehicle and words. The same as
 * `find/search_query.py`, `asked_codes.py` and `asked_vehicles.py`, function by function, with the
 * patterns from there; one table of cases holds both together.
 */
"use strict";
(() => {
  const {
    STOP_WORDS, NEGATIONS, ORDINARY_STEMS, splitWords, stemWord, editDistance, isUsualSlip, nearestWord, splitRunTogether,
  } = baytreeSearch;
  const { codes: CODES, vehicleNumbers: NUMBERS, volts: VOLTS, readings: READINGS, longestQuery, shorthand } =
    baytreeSearchData.rules;

  const FRACTION = new RegExp(baytreeSearchData.rules.fraction, "g");

  // shorthand.py

  const words = (text) => text.split(" ").filter(Boolean);
  const SHORT_FORMS = new Map(Object.entries(shorthand).flatMap(([meant, forms]) =>
    words(forms).map((short) => [short, words(meant)])));

  // guesses.py

  const { guesses: GUESSES } = baytreeSearchData.rules;
  const PARTS = new RegExp(GUESSES.parts, "g"), POINT = new RegExp(GUESSES.point, "g");
  const [GUESS, ASKED] = [new RegExp(GUESSES.guess), new RegExp(GUESSES.asked)];

  const countWords = (text) => text.split(/\s+/).filter(Boolean).length;

  function withoutGuesses(asked) {
    const whole = asked.toLowerCase().replace(POINT, "$1_$2");
    const parts = [...whole.matchAll(PARTS)].map(([part]) => part.trim()).filter(Boolean);
    const told = parts.filter((part) => !isGuess(part));
    const text = told.join(" ");
    const isEnough = countWords(text) >= GUESSES.leastTold;
    return isEnough && told.length < parts.length ? text.replaceAll("_", ".") : "";
  }

  const isGuess = (part) =>
    countWords(part) <= GUESSES.longest && (GUESS.test(part) || ASKED.test(part));

  // search_query.py

  function parseQuery(asked, index) {
    const [number, withoutNumber] = readVehicleNumber(asked);
    const [written, withoutCodes] = readWrittenCodes(withoutNumber);
    const [readings, rest] = putReadingsInWords(withoutCodes);
    const typed = splitWords(rest).flatMap((word) => SHORT_FORMS.get(word) ?? [word]);
    const spelled = spell(typed.slice(0, longestQuery), index, rest !== rest.trimEnd());
    const [make, model, unnamed] = readVehicleName(spelled.words, index);
    const vehicleNamed = Boolean(make.length || model.length || number.number);
    const [bare, years, words] = readBareCodesAndYears(unnamed, index, vehicleNamed);
    const vehicle = { ...number, make, model, years: years.length ? years : number.years };
    const unknown = spelled.unknown.filter((word) => words.includes(word));
    const corrected = [...readings, ...spelled.corrected];
    return { ...spelled, codes: [...written, ...bare], vehicle, words, unknown, corrected };
  }

  function putReadingsInWords(asked) {
    const corrected = [];
    const put = (written, words) => {
      if (words) corrected.push([written, words]);
      return words || written;
    };
    const short = asked.replace(FRACTION, "$1");
    let rest = short.replace(new RegExp(VOLTS.written, "gi"),
      (whole, volts) => put(whole, voltageWords(volts)));
    for (const [written, words] of READINGS)
      rest = rest.replace(new RegExp(written, "gi"), (whole) => put(whole, words));
    return [corrected, rest];
  }

  function voltageWords(volts) {
    const value = Number(volts.replace(",", "."));
    const meaning = VOLTS.meanings.find(([low, high]) => low <= value && value < high);
    return meaning && volts !== VOLTS.nominal ? meaning[2] : "";
  }

  function spell(typed, index, isFinished) {
    const whole = joinParts(typed, index);
    const completions = isFinished ? [] : completeLast(whole, index);
    const spelled = { words: [], completions, corrected: [], unknown: [] };
    for (const [at, word] of whole.entries()) {
      const sure = isKnown(word, index) || (completions.length && at === whole.length - 1);
      const better = sure ? [] : correctWord(word, index);
      spelled.words.push(...(better.length ? better : [word]));
      if (better.length) spelled.corrected.push([word, better.join(" ")]);
      else if (!sure) spelled.unknown.push(word);
    }
    return spelled;
  }

  const isKnown = (word, { known, little, stems }) =>
    known.has(word) || [little, ORDINARY_STEMS, stems].some((each) => each.has(stemWord(word)));

  const isSaid = (word, { everyday, stemUses }) =>
    STOP_WORDS.has(word) || NEGATIONS.has(word) || everyday.has(word)
    || (stemUses.get(stemWord(word)) ?? 0) > 0;

  function joinParts(typed, index) {
    const words = [];
    for (const word of typed) {
      const last = words.at(-1) ?? "";
      const both = isSaid(last, index) && isSaid(word, index);
      if (last && !both && index.known.has(last + word)) words[words.length - 1] = last + word;
      else words.push(word);
    }
    return words;
  }

  const knownBeginning = (word, { known }) =>
    [...known.keys()].filter((longer) => longer.startsWith(word));

  function completeLast(words, index) {
    const last = words.at(-1) ?? "";
    return last.length < 2 || isKnown(last, index) ? [] : knownBeginning(last, index);
  }

  function correctWord(word, index) {
    const near = nearestWord(word, index.known);
    const plain = nearestWord(word, index.plain);
    if (plain && isLikely(word, plain) && !(near && isLikely(word, near))) return [plain];
    const isClose = near && editDistance(word, near, 1) === 1;
    const two = isClose ? null : splitRunTogether(word, index.spoken);
    if (two) return two;
    const nearStem = nearestWord(stemWord(word), index.stemUses);
    const one = near ?? index.stems.get(nearStem) ?? lengthen(word, index);
    return one ? [one] : [];
  }

  const isLikely = (word, meant) => editDistance(word, meant, 1) === 1 && isUsualSlip(word, meant);

  function lengthen(word, index) {
    const longer = word.length > 3 ? knownBeginning(word, index) : [];
    const order = (one, other) =>
      index.known.get(other) - index.known.get(one) || (one < other ? -1 : 1);
    return longer.sort(order)[0];
  }

  // asked_codes.py

  const codeText = ({ letter, digits, failureType }) =>
    letter + digits + (failureType ? `-${failureType}` : "");

  const countDigits = (characters) => (characters.match(/[0-9]/g) ?? []).length;

  function readWrittenCodes(text) {
    const codes = new Map();
    const rest = text.replace(new RegExp(CODES.written, "gi"), (whole, ...groups) => {
      const [letter, marked, failureType = ""] = groups[0] ? groups : groups.slice(3);
      const characters = marked.replace(new RegExp(CODES.marks, "g"), "");
      const digits = characters.toUpperCase().replace(/./g, (one) => CODES.lookAlikes[one] ?? one);
      if (countDigits(characters) < 1 || countDigits(digits) < 2) return whole;
      const code = { letter: letter.toUpperCase(), digits, failureType: failureType.toUpperCase() };
      codes.set(codeText(code), code);
      return " ";
    });
    return [[...codes.values()], rest];
  }

  function readBareCodesAndYears(words, index, vehicleNamed) {
    const [codes, years, others] = [[], [], []];
    const [first, beyond] = CODES.years;
    for (const word of words) {
      const code = { letter: "", digits: word.toUpperCase(), failureType: "" };
      const isCode = codeNames(index, code).length > 0;
      const couldBeYear = /^\d+$/.test(word) && Number(word) >= first && Number(word) < beyond;
      if (!new RegExp(`^${CODES.bare}$`).test(word)) others.push(word);
      else if (couldBeYear && (vehicleNamed || !isCode)) years.push(Number(word));
      else if (word.startsWith("0") || isCode) codes.push(code);
      else others.push(word);
    }
    return [codes, years, others];
  }

  function codeNames(index, { letter, digits }) {
    if (letter) return [letter + digits];
    const names = [...CODES.letters].map((one) => one + digits);
    return names.filter((name) => index.codes.has(name) || index.codeMeanings.has(name));
  }

  // asked_vehicles.py; the sums of a vehicle number are those of trade/vin.py

  function readVehicleNumber(text) {
    const none = { make: [], model: [], years: [], number: "", numberCheck: "" };
    const match = text.match(new RegExp(NUMBERS.written, "i"));
    if (!match) return [none, text];
    const number = match[0].toUpperCase();
    const rest = `${text.slice(0, match.index)} ${text.slice(match.index + number.length)}`;
    if ([...number].some((one) => !(one in NUMBERS.values)))
      return [{ ...none, number, numberCheck: "wrong characters" }, rest];
    const numberCheck = checkDigit(number) === number[8] ? "right" : "wrong check digit";
    return [{ ...none, number, numberCheck, years: modelYears(number) }, rest];
  }

  function checkDigit(number) {
    const value = (weight, at) => weight * NUMBERS.values[number[at]];
    return "0123456789X"[NUMBERS.weights.map(value).reduce((sum, one) => sum + one) % 11];
  }

  function modelYears(number) {
    const at = NUMBERS.yearCodes.indexOf(number[9]);
    const early = NUMBERS.firstYear + at;
    return at < 0 ? [] : [early, early + NUMBERS.cycle];
  }

  function readVehicleName(words, { vehicles, spoken }) {
    const rest = [...words];
    const make = takeFirst(rest, vehicles.map((vehicle) => vehicle.makeWords));
    const ofMake = vehicles.filter(({ makeWords }) => !make.length || same(makeWords, make));
    const names = ofMake.flatMap(({ modelWords }) => [modelWords, modelWords.slice(0, 1)]);
    const sure = names.filter((name) => make.length || name.length > 1 || !spoken.has(name[0]));
    const longestFirst = sure.sort((one, other) => other.length - one.length);
    return [make, takeFirst(rest, longestFirst), rest];
  }

  const same = (one, other) => one.join(" ") === other.join(" ");

  function takeFirst(rest, names) {
    for (const name of names)
      for (let at = 0; name.length && at + name.length <= rest.length; at++)
        if (same(rest.slice(at, at + name.length), name)) return rest.splice(at, name.length);
    return [];
  }

  const isVehicle = ({ make, model, years, number }) =>
    Boolean(make.length || model.length || years.length || number);

  function vehicleFits({ make, model, years }, { makeWords, modelWords, first, last }) {
    return (!make.length || same(make, makeWords))
      && same(model, modelWords.slice(0, model.length))
      && (!years.length || !first || years.some((year) => first <= year && year <= last));
  }

  Object.assign(baytreeSearch, {
    withoutGuesses, parseQuery, codeNames, isVehicle, vehicleFits, readVehicleNumber,
  });
})();
