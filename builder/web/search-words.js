/* Words, misspelt words, the shop's words, codes and vehicles of a query.
 *
 * In: what was typed. Out: tokens, concepts, codes, a vehicle. The same as `find/words.py`,
 * `spelling.py`, `phrasebook.py`, `codes.py` and `vehicles.py`, function by function and under the
 * same names; one table of cases holds both together. A plain script: it works from a folder.
 */
"use strict";
globalThis.baytreeFind ??= {};
(() => {
  const list = (words) => new Set(words.trim().split(/\s+/));
  const STOP = list(`
    a about after again also always am an and are around as at be been before being bit
    but by came car cars client come comes coming could customer did do does doing done during
    even ever fine for from get gets getting go goes going gone got had has have having he her
    here his how i if in into is it its ive just keep keeps kept little longer may me mine my
    near need needs now of ok okay on only onto or our please properly quite really said says
    she should since so some stay stayed stays still suddenly than that the their them then
    there these they this those through to too truck under until up us van vehicle vehicles
    very was we well were what when whenever where which while who why will with would yet you
    your`);
  const NEGATORS = list(`
    aint arent cannot cant couldnt didnt doesn doesnt dont dosent dosnt hasnt havent isnt neither
    never no non nor not unable wasnt werent without wont wouldnt`);
  const unique = (found) => [...new Set(found)];
  const letters = (word) => /^\p{L}+$/u.test(word);

  // words.py

  const ASCII = /^[\x00-\x7f]*$/; // most text: the rest of the folding has nothing to do

  function folded(text) {
    if (ASCII.test(text)) return text.toLowerCase().replace(/['`]|\b(a)\/(?=c\b)/g, "$1");
    const plain = text.replace(/['’‘`´]/g, "").normalize("NFKD").toLowerCase();
    return plain.replace(/\p{M}/gu, "").replace(/\ba\/c\b/g, "ac");
  }

  function surfaces(text) {
    const plain = folded(text);
    return plain.match(ASCII.test(plain) ? /[a-z0-9]+/g : /[\p{L}\p{N}]+/gu) ?? [];
  }

  const stems = new Map();

  function stem(word) {
    if (!stems.has(word)) stems.set(word, stemOf(word));
    return stems.get(word);
  }

  function stemOf(word) {
    if (word.length < 4 || !letters(word)) return word;
    word = withoutEnding(withoutPlural(word.replaceAll("z", "s")));
    if (word.length > 4 && word.endsWith("our")) word = `${word.slice(0, -3)}or`;
    if (word.length > 3 && word.endsWith("e")) word = word.slice(0, -1);
    if (word.length > 3 && word.at(-1) === word.at(-2)) word = word.slice(0, -1);
    return word;
  }

  function withoutPlural(word) {
    if (word.endsWith("ies")) return `${word.slice(0, -3)}y`;
    return word.endsWith("s") && !/(ss|us|is)$/.test(word) ? word.slice(0, -1) : word;
  }

  const ENDINGS = [["ing", 3], ["ed", 3], ["ly", 4], ["ness", 4], ["ment", 4]];

  function withoutEnding(word) {
    for (const [ending, rest] of ENDINGS) {
      const stays = word.slice(0, -ending.length);
      if (word.endsWith(ending) && stays.length >= rest && /[aeiouy]/.test(stays))
        return word.endsWith("eed") ? word : stays;
    }
    return /[st]ion$/.test(word) && word.length > 6 ? word.slice(0, -3) : word;
  }

  function tokens(words) {
    const made = [];
    let negated = false;
    for (const word of words) {
      if (NEGATORS.has(word)) negated = true;
      else if (STOP.has(word)) made.push(word);
      else {
        made.push(negated ? `!${stem(word)}` : stem(word));
        negated = false;
      }
    }
    return made;
  }

  const content = (found) => unique(found.filter((token) => !STOP.has(token)));
  const flipped = (token) => (token.startsWith("!") ? token.slice(1) : `!${token}`);

  // spelling.py

  function editsAllowed(word) {
    if (word.length < 4 || !letters(word)) return 0;
    return word.length < 7 ? 1 : 2;
  }

  // Three rows that are used again and again: this runs over every word that is known.
  let [above, before, row] = [[], [], []];

  function distance(one, other, limit) {
    if (Math.abs(one.length - other.length) > limit) return limit + 1;
    for (let j = 0; j <= other.length; j++) row[j] = j;
    for (let i = 1; i <= one.length; i++) {
      [above, before, row] = [before, row, above];
      row[0] = i;
      let least = i;
      for (let j = 1; j <= other.length; j++) {
        const replaced = before[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1);
        let cost = Math.min(before[j] + 1, row[j - 1] + 1, replaced);
        if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1])
          cost = Math.min(cost, above[j - 2] + 1);
        row[j] = cost;
        least = Math.min(least, cost);
      }
      if (least > limit) return limit + 1;
    }
    return Math.min(row[other.length], limit + 1);
  }

  function nearest(word, known) {
    const limit = editsAllowed(word);
    let best = null;
    for (const [candidate, used] of limit ? known : []) {
      const otherStart = candidate[0] === word[0] ? 0 : 1;
      const allowed = otherStart ? Math.min(limit, word.length > 5 ? 1 : 0) : limit;
      if (candidate.length < 4 || lettersApart(word, candidate) > 2 * allowed) continue;
      const apart = distance(word, candidate, allowed);
      if (apart > allowed) continue;
      const rank = [apart, otherStart, leftOut(word, candidate) ? 0 : 1, -used, candidate];
      if (!best || precedes(rank, best)) best = rank;
    }
    return best && best[4];
  }

  // Letters that only one of two words has: an edit changes two at most. Only to be quick.
  const masks = new Map();

  function maskOf(word) {
    if (!masks.has(word)) {
      let mask = 0;
      for (let at = 0; at < word.length; at++) mask |= 1 << (word.charCodeAt(at) % 31);
      masks.set(word, mask);
    }
    return masks.get(word);
  }

  function lettersApart(one, other) {
    let apart = 0;
    for (let bits = maskOf(one) ^ maskOf(other); bits; bits &= bits - 1) apart++;
    return apart;
  }

  function precedes(one, other) {
    const at = one.findIndex((value, place) => value !== other[place]);
    return at >= 0 && one[at] < other[at];
  }

  function leftOut(word, candidate) {
    let at = 0;
    for (const sign of candidate) if (sign === word[at]) at++;
    return at === word.length;
  }

  function parted(word, known) {
    for (let cut = word.length - 3; cut > 2; cut--)
      if (known.has(word.slice(0, cut)) && known.has(word.slice(cut)))
        return [word.slice(0, cut), word.slice(cut)];
    return null;
  }

  // phrasebook.py; tokens are joined by blanks where they are keys

  const GAP = 2;

  function phrasebook(slang, same) {
    const book = { same: new Map(), terms: new Map(), slang: new Map() };
    const rows = same.map(([phrase, terms]) => ({
      found: tokens(surfaces(phrase)), phrase, terms,
    }));
    for (const { found, terms } of rows.filter(({ found }) => found.length === 1))
      if (!book.same.has(found[0])) book.same.set(found[0], content(tokens(surfaces(terms[0]))));
    for (const [phrase, terms] of slang) {
      const key = shopWords(surfaces(phrase), book.same).join(" ");
      if (!key) continue;
      if (!book.terms.has(key)) book.terms.set(key, termsOf(terms, book.same));
      book.slang.set(key, [...(book.slang.get(key) ?? []), [phrase, terms]]);
    }
    for (const { phrase, terms } of rows.filter(({ found }) => found.length > 1)) {
      const key = shopWords(surfaces(phrase), book.same).join(" ");
      book.terms.set(key, [...(book.terms.get(key) ?? []), ...termsOf(terms, book.same)]);
    }
    return { ...book, starts: startsOf([...book.terms.keys()]) };
  }

  function slangSaid(parts, words, book) {
    const pairs = parts.flatMap((part) => book.slang.get(part.phrase) ?? []);
    return pairs.filter(([phrase]) => surfaces(phrase).every((word) => words.includes(word)));
  }

  function startsOf(phrases) {
    const starts = new Map();
    const length = (phrase) => phrase.split(" ").length;
    phrases.sort((one, other) => length(other) - length(one) || (one < other ? -1 : 1));
    for (const phrase of phrases) {
      const words = phrase.split(" ");
      const first = plain(words[0]);
      starts.set(first, [...(starts.get(first) ?? []), { phrase, words }]);
    }
    return starts;
  }

  const termsOf = (terms, same) => terms.map((term) => content(shopWords(surfaces(term), same)));

  const shopWords = (words, same) => tokens(words).flatMap((token) => inPlace(token, same));

  function inPlace(token, same) {
    if (same.has(token) || !same.has(plain(token))) return same.get(token) ?? [token];
    return withNo(same.get(plain(token)), true);
  }

  function concepts(found, book) {
    const made = new Map();
    for (let at = 0; at < found.length; ) {
      const match = matchAt(found, at, book);
      if (match) {
        const concept = phraseConcept(found, at, match, book);
        made.set(concept.alternatives.map((words) => words.join(" ")).join("|"), concept);
      } else if (!STOP.has(found[at])) {
        made.set(found[at], { alternatives: [[found[at]]], phrase: "" });
      }
      at += match ? match.length : 1;
    }
    return [...made.values()];
  }

  function phraseConcept(found, at, match, book) {
    const own = content(found.slice(at, at + match.length));
    const terms = book.terms.get(match.phrase).map((term) => withNo(term, match.negated));
    const wordings = new Map([own, ...terms].map((words) => [words.join(" "), words]));
    wordings.delete("");
    return { alternatives: [...wordings.values()], phrase: match.phrase };
  }

  function matchAt(found, at, book) {
    for (const { phrase, words } of book.starts.get(plain(found[at])) ?? [])
      for (const negated of [false, true]) {
        const length = lengthOf(found, at, words, negated);
        if (length) return { phrase, length, negated };
      }
    return null;
  }

  function lengthOf(found, at, phrase, negated) {
    let end = at;
    let gap = GAP;
    for (const word of phrase) {
      while (gap && at < end && end < found.length && found[end] !== word && STOP.has(found[end])) {
        gap--;
        end++;
      }
      if (end === found.length || word !== (negated ? plain(found[end]) : found[end])) return 0;
      end++;
    }
    return end - at;
  }

  const plain = (token) => (token.startsWith("!") ? token.slice(1) : token);

  const withNo = (term, negated) =>
    negated && term.length ? [flipped(term[0]), ...term.slice(1)] : term;

  // codes.py

  const WRITTEN = new RegExp(
    "(?<![a-z0-9])([pcbu])[\\s._-]{0,2}([0-3o][0-9a-foil]{3})(?:[-:]?([0-9a-f]{2}))?(?![a-z0-9])" +
      "|(?<![a-z0-9])()([0-3][0-9a-f]{3})-([0-9a-f]{2})(?![a-z0-9])",
    "gi",
  );
  const LOOK_ALIKES = { O: "0", I: "1", L: "1" };
  const codeText = (code) =>
    code.letter + code.digits + (code.failureType ? `-${code.failureType}` : "");

  function writtenCodes(text) {
    const codes = new Map();
    const rest = text.replace(WRITTEN, (whole, ...groups) => {
      const [letter, signs, failureType = ""] = groups[0] ? groups : groups.slice(3);
      if ((signs.match(/[0-9]/g) ?? []).length < 2) return whole;
      const digits = signs.toUpperCase().replace(/[OIL]/g, (sign) => LOOK_ALIKES[sign]);
      const code = { letter: letter.toUpperCase(), digits, failureType: failureType.toUpperCase() };
      codes.set(codeText(code), code);
      return " ";
    });
    return [[...codes.values()], rest];
  }

  function bareCodesAndYears(words, digits, vehicleNamed) {
    const [codes, years, others] = [[], [], []];
    for (const word of words) {
      const four = word.toUpperCase();
      const year = /^\d+$/.test(word) && Number(word) >= 1980 && Number(word) < 2050;
      if (!/^[0-3][0-9a-f]{3}$/.test(word)) others.push(word);
      else if (year && (vehicleNamed || !digits.has(four))) years.push(Number(word));
      else if (word.startsWith("0") || digits.has(four))
        codes.push({ letter: "", digits: four, failureType: "" });
      else others.push(word);
    }
    return [codes, years, others];
  }

  // vehicles.py; a VIN's check digit and years are those of trade/vin.py

  const NUMBER = /(?<![a-z0-9])(?=[a-z]*[0-9])[a-z0-9]{17}(?![a-z0-9])/i;
  const VALUES = ["0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ"];
  const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];
  const YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789";

  function checkDigit(number) {
    const value = (sign) => VALUES.findIndex((signs) => signs.includes(sign));
    const total = WEIGHTS.reduce((sum, weight, at) => sum + weight * value(number[at]), 0);
    return "0123456789X"[total % 11];
  }

  function modelYears(number) {
    const at = YEAR_CODES.indexOf(number[9]);
    return at < 0 ? [] : [1980 + at, 2010 + at];
  }

  const noVehicle = () => ({ make: [], model: [], years: [], number: "", numberSays: "" });

  function numberIn(text) {
    const found = text.match(NUMBER);
    if (!found) return [noVehicle(), text];
    const number = found[0].toUpperCase();
    const rest = `${text.slice(0, found.index)} ${text.slice(found.index + 17)}`;
    if (/[IOQ]/.test(number))
      return [{ ...noVehicle(), number, numberSays: "wrong signs" }, rest];
    const numberSays = checkDigit(number) === number[8] ? "right" : "wrong check digit";
    return [{ ...noVehicle(), number, numberSays, years: modelYears(number) }, rest];
  }

  function namedIn(words, vehicles, spoken) {
    const rest = [...words];
    const makes = unique(vehicles.map(([make]) => surfaces(make).join(" ")));
    const make = first(rest, makes.sort());
    const names = vehicles
      .filter((vehicle) => !make.length || surfaces(vehicle[0]).join(" ") === make.join(" "))
      .map((vehicle) => surfaces(vehicle[1]));
    const sure = [...names, ...names.map((name) => name.slice(0, 1))]
      .filter((name) => make.length || name.length > 1 || !spoken.has(name[0]))
      .map((name) => name.join(" "));
    const length = (name) => name.split(" ").length;
    const longestFirst = (one, other) => length(other) - length(one) || (one < other ? -1 : 1);
    return [make, first(rest, unique(sure).sort(longestFirst)), rest];
  }

  function first(rest, names) {
    for (const name of names) {
      const words = name.split(" ");
      for (let at = 0; name && at + words.length <= rest.length; at++)
        if (rest.slice(at, at + words.length).join(" ") === name)
          return rest.splice(at, words.length);
    }
    return [];
  }

  const isVehicle = (asked) =>
    Boolean(asked.make.length || asked.model.length || asked.years.length || asked.number);

  function fits(asked, [make, model, firstYear, lastYear]) {
    const named = surfaces(model).slice(0, asked.model.length).join(" ");
    return (
      (!asked.make.length || asked.make.join(" ") === surfaces(make).join(" ")) &&
      asked.model.join(" ") === named &&
      (!asked.years.length ||
        !firstYear ||
        asked.years.some((year) => firstYear <= year && year <= lastYear))
    );
  }

  Object.assign(globalThis.baytreeFind, {
    STOP, NEGATORS, folded, surfaces, stem, tokens, content, flipped, distance, nearest, parted,
    phrasebook, shopWords, concepts, slangSaid, writtenCodes, bareCodesAndYears, codeText, checkDigit,
    numberIn, namedIn, isVehicle, fits, letters, unique, plain,
  });
})();
