/* Misspelled words: the nearest known word.
 *
 * In: a word that no tree knows, and the words that are known with how often each stands. Out: what
 * was likely meant, or nothing. The same as `find/spelling.py`, function by function.
 */
"use strict";
(() => {
  const { isAllLetters } = baytreeSearch;

  function editsAllowed(word) {
    if (word.length < 4 || !isAllLetters(word)) return 0;
    return word.length < 7 ? 1 : 2;
  }

  // Three rows that are used again and again: this runs over every word that is known.
  let [above, before, row] = [[], [], []];

  function editDistance(one, other, limit) {
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

  function nearestWord(word, known) {
    const limit = editsAllowed(word);
    const rest = word.slice(2);
    let best = null;
    for (const [candidate, uses] of limit ? known : []) {
      const isOtherStart = candidate[0] !== word[0];
      if (candidate.length < 4 || (isOtherStart && !candidate.endsWith(rest))) continue;
      const ofStart = isOtherStart ? Math.min(limit, word.length > 5 ? 1 : 0) : limit;
      const allowed = uses < 0 ? Math.min(ofStart, 1) : ofStart;
      const edits = editDistance(word, candidate, allowed);
      if (edits > allowed) continue;
      const otherLetters = isUsualSlip(word, candidate) ? 0 : 1;
      const order = [edits, isOtherStart ? 1 : 0, otherLetters, -uses, candidate];
      if (!best || precedes(order, best)) best = order;
    }
    return best && best[4];
  }

  function precedes(one, other) {
    const at = one.findIndex((value, place) => value !== other[place]);
    return at >= 0 && one[at] < other[at];
  }

  // Letters were only left out, or only the vowels are others.
  function isUsualSlip(word, candidate) {
    let at = 0;
    for (const letter of candidate) if (letter === word[at]) at++;
    return at === word.length || consonants(word) === consonants(candidate);
  }

  const consonants = (word) => word.replace(/[aeiouy]/g, "");

  function splitRunTogether(word, known) {
    for (let cut = word.length - 3; cut > 2; cut--)
      if (known.has(word.slice(0, cut)) && known.has(word.slice(cut)))
        return [word.slice(0, cut), word.slice(cut)];
    return null;
  }

  Object.assign(baytreeSearch, { editDistance, isUsualSlip, nearestWord, splitRunTogether });
})();
