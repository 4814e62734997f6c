/* The symptom index, and a query taken apart by it.
 *
 * In: the rows of the shop (`search-rows.js`), or what was typed. Out: entries, phrases, and where
 * each word and code stands; codes, vehicle and words of a query. The same as `find/index.py` and
 * `question.py`, function by function.
 */
"use strict";
(() => {
  const find = globalThis.baytreeFind;
  const { STOP, NEGATORS, surfaces, stem, unique } = find;

  // A tally counts by number, and remembers which numbers it has touched.
  const tally = (size) => ({ of: new Int32Array(size), at: new Int32Array(size), size: 0 });

  // index.py

  function index(rows) {
    const book = find.phrasebook(rows.slang, rows.same);
    const made = {
      rows, book, entries: entriesOf(rows), phrases: [], postings: new Map(),
      spoken: new Map(),
    };
    for (const [entry, text, weight] of textsOf(rows)) {
      const words = surfaces(text);
      const parts = find.concepts(find.shopWords(words, book.same), book);
      for (const token of tokensOf(parts)) push(made.postings, token, made.phrases.length);
      made.phrases.push({ entry, text, length: parts.length, weight });
      for (const word of words) made.spoken.set(word, (made.spoken.get(word) ?? 0) + 1);
    }
    made.codes = codesOf(rows);
    made.codeSays = new Map(rows.codes);
    made.digits = digitsOf(unique([...made.codes.keys(), ...made.codeSays.keys()]));
    made.known = knownOf(rows, made.spoken);
    made.stems = stemsOf(made.known);
    made.everyday = new Set(rows.everyday.split(" "));
    made.little = new Set([...made.everyday].map(stem));
    made.stemUses = new Map([...made.stems].map(([short, word]) => [short, made.known.get(word)]));
    const [entries, phrases] = [made.entries.length, made.phrases.length];
    made.entryOf = Int32Array.from(made.phrases, ({ entry }) => entry);
    made.weightOf = Int32Array.from(made.phrases, ({ weight }) => weight);
    made.seen = new Map(); // concepts that were asked for
    made.tallies = { // used again for every query
      best: tally(entries), count: tally(entries), totals: tally(phrases), credits: tally(phrases),
      phraseGain: tally(phrases), phraseCredit: tally(phrases),
    };
    return made;
  }

  function push(map, key, value) {
    if (map.has(key)) map.get(key).push(value);
    else map.set(key, [value]);
  }

  function entriesOf(rows) {
    const trees = rows.trees.map(([id, title, , , , , vehicles, draft]) => ({
      id, title, kind: "tree", vehicles: vehicles.map((at) => rows.vehicles[at]),
      draft: Boolean(draft),
    }));
    const howTos = rows.how_tos.map(([id, title]) => ({
      id, title, kind: "how-to", vehicles: [], draft: false,
    }));
    return [...trees, ...howTos];
  }

  const [OWN, SYSTEM] = [100, 60];
  const lampWeight = (lamps) => Math.max(40, 90 - 10 * lamps);

  function* textsOf(rows) {
    for (const [at, [, title, system, lamps, , words]] of rows.trees.entries()) {
      for (const text of [title, ...words]) yield [at, text, OWN];
      for (const lamp of lamps) {
        const weight = lampWeight(lamps.length);
        yield [at, rows.lamps[lamp][1], weight];
        yield [at, rows.lamps[lamp][2], weight - 20];
      }
      if (system >= 0) yield [at, rows.systems[system][1], SYSTEM];
    }
    for (const [at, [, title]] of rows.how_tos.entries())
      yield [rows.trees.length + at, title, OWN];
  }

  function tokensOf(parts) {
    const found = new Set();
    for (const part of parts)
      for (const words of part.alternatives) for (const token of words) found.add(token);
    return found;
  }

  function codesOf(rows) {
    const codes = new Map();
    for (const [entry, [, , , , listed]] of rows.trees.entries())
      for (const [place, code] of listed.entries()) {
        const [short, failureType = ""] = code.split("-");
        push(codes, short, { entry, failureType, place });
      }
    return codes;
  }

  function digitsOf(codes) {
    const digits = new Map();
    for (const code of codes.sort()) push(digits, code.slice(1), code);
    return digits;
  }

  function knownOf(rows, spoken) {
    const texts = [
      ...[...rows.same, ...rows.slang].flatMap(([phrase, terms]) => [phrase, ...terms]),
      ...rows.vehicles.flatMap(([make, model]) => [make, model]),
    ];
    const others = [...STOP, ...NEGATORS, ...texts.flatMap(surfaces)];
    return new Map([...others.map((word) => [word, 0]), ...spoken]);
  }

  // The most used surface of each stem.
  function stemsOf(known) {
    const stems = new Map();
    for (const [word, used] of [...known].sort(([one], [other]) => (one < other ? -1 : 1))) {
      const other = stems.get(stem(word));
      if (other === undefined || used > known.get(other)) stems.set(stem(word), word);
    }
    return stems;
  }

  // question.py

  const VOLTS = /(?<![\w.,-])(\d{1,2}(?:[.,]\d{1,2})?) ?v(?:olts?)?(?![a-z])/gi;
  const [LOW, HIGH, LOWEST, HIGHEST, NOMINAL] = [12.3, 15, 8, 20, "12"];

  function question(asked, index) {
    const [number, withoutNumber] = find.numberIn(asked);
    const [written, rest] = find.writtenCodes(withoutNumber);
    const [volts, worded] = voltsInWords(rest);
    const spelt = spell(surfaces(worded).slice(0, 30), index, worded !== worded.trimEnd());
    const [make, model, others] = find.namedIn(spelt.words, index.rows.vehicles, index.spoken);
    const named = Boolean(make.length || model.length || number.number);
    const [bare, years, words] = find.bareCodesAndYears(others, index.digits, named);
    const vehicle = { ...number, make, model, years: years.length ? years : number.years };
    const unknown = spelt.unknown.filter((word) => words.includes(word));
    const corrected = [...volts, ...spelt.corrected];
    return { codes: [...written, ...bare], vehicle, spelt: { ...spelt, words, unknown, corrected } };
  }

  function voltsInWords(asked) {
    const taken = [];
    const rest = asked.replace(VOLTS, (whole, figure) => {
      const said = says(figure);
      if (said) taken.push([whole, said]);
      return said || whole;
    });
    return [taken, rest];
  }

  function says(volts) {
    const figure = Number(volts.replace(",", "."));
    if (figure >= HIGH && figure < HIGHEST) return "charging voltage too high";
    return figure >= LOWEST && figure < LOW && volts !== NOMINAL ? "low voltage" : "";
  }

  function spell(typed, index, finished) {
    const words = joined(typed, index);
    const started = finished ? [] : startedBy(words, index);
    const spelt = { words: [], started, corrected: [], unknown: [] };
    for (const [at, word] of words.entries()) {
      const sure = isKnown(word, index) || (started.length && at === words.length - 1);
      const better = sure ? [] : corrected(word, index);
      spelt.words.push(...(better.length ? better : [word]));
      if (better.length) spelt.corrected.push([word, better.join(" ")]);
      else if (!sure) spelt.unknown.push(word);
    }
    return spelt;
  }

  const isKnown = (word, index) => 
    index.known.has(word) || index.everyday.has(word) || index.stems.has(stem(word));

  function joined(typed, index) {
    const made = [];
    for (const word of typed) {
      const last = made.at(-1) ?? "";
      const both = isKnown(last, index) && isKnown(word, index);
      if (last && !both && index.known.has(last + word)) made[made.length - 1] = last + word;
      else made.push(word);
    }
    return made;
  }

  function startedBy(words, index) {
    const last = words.at(-1) ?? "";
    if (last.length < 2 || isKnown(last, index)) return [];
    return [...index.known.keys()].filter((known) => known.startsWith(last)).sort();
  }

  function corrected(word, index) {
    const near = find.nearest(word, index.known);
    const close = near && find.distance(word, near, 1) === 1;
    const two = close ? null : find.parted(word, index.spoken);
    if (two) return two;
    const one = near ??
      index.stems.get(find.nearest(stem(word), index.stemUses)) ?? shortFor(word, index);
    return one ? [one] : [];
  }

  function shortFor(word, index) {
    let best = null;
    for (const [known, used] of word.length > 3 ? index.known : []) {
      if (!known.startsWith(word)) continue;
      const more = best && used - index.known.get(best);
      if (!best || more > 0 || (more === 0 && known < best)) best = known;
    }
    return best;
  }

  Object.assign(find, { index, question, tally });
})();
