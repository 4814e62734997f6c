/* Whether a query tells of danger, and the safety lines for it.
 *
 * In: the words of a query. Out: the lines, the gravest first. The same as `find/safety.py`, function
 * by function, with the signs from there.
 */
"use strict";
(() => {
  const { stemWord } = baytreeSearch;
  const { near, takenOut, mostLines, harmless, parts: PARTS, dangers } =
    baytreeSearchData.rules.safety;

  const phrasesOf = (text) => text.split("|").filter(Boolean).map((phrase) => phrase.split(" "));
  const HARMLESS = phrasesOf(harmless);
  const DANGERS = dangers.map(([text, signs]) => [text, signs.map(signOf)]);

  function signOf(numbers) {
    const parts = numbers.map((number) => phrasesOf(PARTS[number]));
    return { parts: parts.slice(0, -1), unless: parts.at(-1) };
  }

  function safetyLines(words) {
    const stems = withoutHarmless(words.map(stemWord));
    const shown = DANGERS.filter(([, signs]) => signs.some((sign) => shows(sign, stems)));
    return shown.slice(0, mostLines).map(([text]) => text);
  }

  function withoutHarmless(stems) {
    for (const phrase of HARMLESS)
      for (const at of placesOf([phrase], stems)) stems.fill(takenOut, at, at + phrase.length);
    return stems;
  }

  function shows({ parts: [first, ...others], unless }, stems) {
    if (placesOf(unless, stems).length) return false;
    return placesOf(first, stems).some((start) => others.every((part) =>
      placesOf(part, stems).some((at) => Math.abs(at - start) < near)));
  }

  function placesOf(part, stems) {
    const begun = part.filter(([first]) => stems.includes(first)); // most are not: this is fast
    return begun.flatMap((phrase) =>
      [...stems.keys()].filter((at) => phrase.every((word, of) => stems[at + of] === word)));
  }

  baytreeSearch.safetyLines = safetyLines;
})();
