/* Whether a query tells of danger, and the safety lines for it.
 *
 * In: the words of a query. Out: the lines, the gravest first. The same as `find/safety.py`, function
 * by function, with the signs from there.
 */
"use strict";
(() => {
  const { stemWord, splitWords } = baytreeSearch;
  const RULES = baytreeSearchData.rules.safety;

  const PLAIN_FORMS = new Map(RULES.smallWords.split(" ").map((word) => [word, ""]));
  for (const [plain, forms] of Object.entries(RULES.plainForms))
    for (const word of forms.split(" ")) PLAIN_FORMS.set(word, plain);
  const GROUPS = new Map(Object.entries(RULES.groups));
  const phrasesOfGroup = new Map();
  const DANGERS = RULES.dangers.map(([text, signs, harmless]) =>
    ({ text, signs: entries(signs).map(readSign), harmless: entries(harmless).map(readHarmless) }));

  function dangerWords() {
    const texts = RULES.dangers.flatMap(([, signs, harmless]) => [signs, harmless]);
    const phrases = entries([...GROUPS.values(), ...texts].join(";"), /[,;+]| unless /);
    const forms = [...PLAIN_FORMS.keys(), ...Object.keys(RULES.plainForms)];
    const said = [...phrases.filter((phrase) => !GROUPS.has(phrase)), ...forms];
    return new Set(said.flatMap(splitWords));
  }

  function entries(text, between = ";") {
    return text.split(between).map((each) => each.trim()).filter(Boolean);
  }

  function readSign(text) {
    const [together, unless = ""] = text.split(" unless ");
    return { parts: together.split(",").map(partOf), unless: partOf(unless) };
  }

  function readHarmless(text) {
    const [first, behind = ""] = text.split("+");
    return { first: partOf(first), behind: partOf(behind) };
  }

  function partOf(text) {
    const part = new Map();
    for (const phrase of phrasesOf(text)) {
      const words = phrase.split(" ");
      part.set(words[0], [...(part.get(words[0]) ?? []), words]);
    }
    return part;
  }

  function phrasesOf(text) {
    const each = entries(text, ",").map((phrase) => {
      if (!GROUPS.has(phrase)) return [plainStems(phrase.split(" ")).join(" ")];
      if (!phrasesOfGroup.has(phrase)) phrasesOfGroup.set(phrase, phrasesOf(GROUPS.get(phrase)));
      return [...phrasesOfGroup.get(phrase)];
    });
    return new Set(each.flat());
  }

  function plainStems(words) {
    return words.map((word) => PLAIN_FORMS.get(word) ?? word).filter(Boolean).map(stemWord);
  }

  function safetyLines(words) {
    const stems = plainStems(words);
    const shown = DANGERS.filter((danger) => tellsOf(danger, stems));
    return shown.slice(0, RULES.mostLines).map(({ text }) => text);
  }

  function tellsOf({ signs, harmless }, stems) {
    const left = withoutHarmless(harmless, stems);
    return signs.some((sign) => shows(sign, left));
  }

  function withoutHarmless(harmless, stems) {
    const left = [...stems];
    for (const { first, behind } of harmless)
      for (const [start, end] of placesOf(first, stems)) {
        const ends = placesOf(behind, stems).filter(([at]) => at === end).map(([, last]) => last);
        for (const last of behind.size ? ends : [end]) left.fill(RULES.takenOut, start, last);
      }
    return left;
  }

  function shows({ parts, unless }, stems) {
    let starts = startsOf(parts[0], stems);
    for (const part of parts.slice(1)) {
      if (!starts.length) return false;
      const places = startsOf(part, stems);
      starts = starts.filter((start) => isNear(start, places));
    }
    const away = starts.length ? startsOf(unless, stems) : [];
    return starts.some((start) => !isNear(start, away));
  }

  const startsOf = (part, stems) => placesOf(part, stems).map(([at]) => at);
  const isNear = (start, places) => places.some((at) => Math.abs(at - start) < RULES.near);

  function placesOf(part, stems) {
    const places = [];
    for (const [at, stem] of stems.entries())
      for (const phrase of part.get(stem) ?? []) {
        const end = endOf(phrase, stems, at);
        if (end) places.push([at, end]);
      }
    return places;
  }

  function endOf(phrase, stems, start) {
    let [end, most] = [start + 1, 1];
    for (const word of phrase.slice(1)) {
      if (word === RULES.anyWords) {
        most = 1 + RULES.mostAny;
        continue;
      }
      const at = stems.indexOf(word, end);
      if (at < 0 || at >= end + most) return 0;
      [end, most] = [at + 1, 1];
    }
    return end;
  }

  Object.assign(baytreeSearch, { safetyLines, dangerWords });
})();
