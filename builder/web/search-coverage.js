/* How much of a query each entry covers, and how sure that makes us.
 *
 * In: the concepts of a query and the index. Out: in whole numbers, what each entry gains, its share
 * of the query, how well its best phrase fits, and which subjects and complaints it has. The same as
 * `find/coverage.py`, `covered_concepts.py`, `concept_kinds.py`, `mentions.py` and `strength.py`,
 * function by function, with the figures from there.
 */
"use strict";
(() => {
  const { nameOf, opposite, withoutNo } = baytreeSearch;
  const { rules } = baytreeSearchData;

  // Counts by number of a phrase or an entry stand in arrays: a word can be in thousands of them.
  const counts = (size) => new Int32Array(size);

  function measureCoverage(concepts, index, unlisted = 0) {
    const [gain, credit] = [counts(index.entries.length), counts(index.entries.length)];
    const [phraseGain, phraseCredit] = [counts(index.phrases.length), counts(index.phrases.length)];
    const has = { subject: counts(gain.length), lone: counts(gain.length), complaint: counts(gain.length) };
    const [inTitle, subjectInTitle] = [counts(gain.length), counts(gain.length)];
    const named = { subject: 0, lone: unlisted, complaint: 0 };
    const said = counts(gain.length);
    let [most, words, everyday, errands] = [0, 0, 0, 0];
    for (const concept of concepts) {
      const { inPhrases, best, raised, titles, rarity, kind } = cover(concept, index);
      const weight = rules.kindWeights[kind];
      const rare = Math.floor((rarity * weight) / 100);
      most += rare * 100;
      words += concept.words * weight;
      addTo(gain, raised, rare);
      addTo(credit, best, concept.words * weight);
      addTo(phraseGain, inPhrases, rare);
      addTo(phraseCredit, inPhrases, 1);
      if (kind in named) {
        named[kind]++;
        countAbove(has[kind], best, rules.partCredit);
      }
      countAbove(said, best, rules.clearCredit, concept.words);
      if (kind === "everyday") everyday++;
      else if (kind === "errand") errands++;
      else countAbove(inTitle, titles, rules.clearCredit);
      if (kind === "subject" || kind === "lone") countAbove(subjectInTitle, titles, rules.clearCredit);
    }
    const brevity = unlisted ? 0 : Math.max(0, 3 - concepts.length);
    const fits = bestPhrases(index, phraseGain, phraseCredit, most);
    const mentions = { brevity, everyday, errands, named, has, said, subjectInTitle, inTitle };
    return { words, gain, credit, ...fits, ...mentions };
  }

  function countAbove(totals, { places, credits }, least, each = 1) {
    for (let at = 0; at < places.length; at++) if (credits[at] > least) totals[places[at]] += each;
  }

  function addTo(totals, { places, credits }, times) {
    for (let at = 0; at < places.length; at++) totals[places[at]] += credits[at] * times;
  }

  function packed(all) {
    const [places, credits] = [counts(all.size), counts(all.size)];
    let at = 0;
    for (const [place, credit] of all) {
      places[at] = place;
      credits[at++] = credit;
    }
    return { places, credits };
  }

  function kindOf({ alternatives }, index) {
    const wordings = new Set(alternatives.map((words) => words.map(withoutNo).join(" ")));
    const isAnyOf = (set) => [...wordings].some((wording) => set.has(wording));
    const [subjects, lone, complaints, errands] = index.trade;
    if (isAnyOf(subjects)) return "subject";
    if (isAnyOf(lone)) return "lone";
    if (isAnyOf(complaints)) return "complaint";
    if (isAnyOf(errands)) return "errand";
    if (wordings.size === 1 && (isAnyOf(index.little) || isAnyOf(NUMBERS))) return "everyday";
    const isKnown = (token) => index.postings.has(token) || index.postings.has(opposite(token));
    return alternatives.flat().some(isKnown) ? "plain" : "unknown";
  }

  const NUMBERS = { has: (wording) => /^\p{Nd}+$/u.test(wording) };

  // What a concept covers is kept: the same words are asked for again with every letter typed.
  const KEPT = 200;

  function cover(concept, index) {
    const name = nameOf(concept);
    if (index.covered.size === KEPT) index.covered.clear();
    if (!index.covered.has(name)) index.covered.set(name, coverAnew(concept, index));
    return index.covered.get(name);
  }

  function coverAnew(concept, index) {
    const inPhrases = coveredPhrases(concept, index);
    const [best, count, titles] = [new Map(), new Map(), new Map()];
    for (const [phrase, credit] of inPhrases) {
      const { entry, isTitle } = index.phrases[phrase];
      if (isTitle) titles.set(entry, credit);
      best.set(entry, Math.max(best.get(entry) ?? 0, credit));
      count.set(entry, (count.get(entry) ?? 0) + 1);
    }
    const { places, credits } = packed(best);
    const raised = credits.map((credit, at) =>
      Math.floor((credit * (9 + Math.min(count.get(places[at]), 4))) / 10));
    const having = credits.filter((credit) => credit > rules.clearCredit).length;
    return {
      inPhrases: packed(inPhrases), best: { places, credits }, raised: { places, credits: raised },
      titles: packed(titles), kind: kindOf(concept, index),
      rarity: rarityOf(index.entries.length, having),
    };
  }

  // How well the best phrase of each entry fits, and which one it is: its number, or -1.
  function bestPhrases(index, gain, credit, most) {
    const [fit, covered] = [counts(index.entries.length), counts(index.entries.length)];
    const phrase = counts(index.entries.length).fill(-1);
    for (let at = 0; at < gain.length; at++) {
      if (gain[at] === 0) continue;
      const { entry, length } = index.phrases[at];
      const precision = Math.min(Math.floor(credit[at] / length), 100);
      const fits = harmonicMean(Math.floor((gain[at] * 100) / most), precision);
      if (phrase[entry] >= 0 && fits <= fit[entry]) continue;
      fit[entry] = fits;
      covered[entry] = precision;
      phrase[entry] = at;
    }
    return { fit, covered, phrase };
  }

  const harmonicMean = (recall, precision) =>
    recall + precision ? Math.floor((2 * recall * precision) / (recall + precision)) : 0;

  function coveredPhrases({ alternatives }, index) {
    const credits = new Map();
    for (const words of alternatives) {
      const tokens = withWhole(words, index);
      for (const [phrase, total] of phrasesWith(tokens, index)) {
        const part = Math.floor(total / tokens.length);
        const credit = Math.floor((part * part) / 100);
        const weighted = Math.floor((credit * index.phrases[phrase].weight) / 100);
        credits.set(phrase, Math.max(credits.get(phrase) ?? 0, weighted));
      }
    }
    return credits;
  }

  // A part of several words is more than these.
  function withWhole(words, { trade: [subjects, lone] }) {
    const whole = words.map(withoutNo).join(" ");
    const isPart = words.length > 1 && (lone.has(whole) || subjects.has(whole));
    return isPart ? [...words, words.join(" ")] : words;
  }

  function phrasesWith(words, index) {
    const totals = new Map();
    const add = (phrase, number) => totals.set(phrase, (totals.get(phrase) ?? 0) + number);
    for (const token of words) {
      const own = index.postings.get(token) ?? [];
      for (const phrase of own) add(phrase, 100);
      const contrary = index.postings.get(opposite(token));
      if (!contrary) continue;
      const isOwn = new Set(own);
      for (const phrase of contrary) if (!isOwn.has(phrase)) add(phrase, rules.oppositeCredit);
    }
    return totals;
  }

  // The share of the query that an entry covers, in percent.
  const shareOf = ({ credit, words }, entry) => (words ? Math.floor(credit[entry] / words) : 0);

  const rarityOf = (entries, having) =>
    Math.floor(100 * Math.log(1 + entries / Math.max(1, having)) + 0.5);

  // strength.py

  const { strength: POINTS } = rules;

  function strengthOf(coverage, entry, entries) {
    if (coverage.phrase[entry] < 0) return -POINTS.asked;
    const rarest = Math.floor(coverage.gain[entry] / rarityOf(entries, 1));
    const points = coverage.said[entry] * POINTS.eachWord
      + Math.floor((coverage.fit[entry] * POINTS.fit) / 100)
      + Math.floor((Math.min(rarest, POINTS.mostEvidence) * POINTS.evidence) / 100)
      + Math.floor((coverage.covered[entry] * POINTS.covered) / 100)
      + coverage.everyday * POINTS.eachEveryday
      + Math.min(coverage.inTitle[entry], POINTS.mostInTitle) * POINTS.eachInTitle;
    return points - askedOf(coverage, entry);
  }

  function askedOf({ brevity, errands, named, has }, entry) {
    const missing = named.lone - has.lone[entry];
    const tellsOfParts = brevity !== POINTS.look && (named.subject || named.lone);
    return POINTS.asked - brevity * POINTS.short - (tellsOfParts ? 0 : POINTS.noParts)
      + missing * POINTS.loneMissing + errands * POINTS.eachErrand;
  }

  Object.assign(baytreeSearch, { kindOf, measureCoverage, shareOf, strengthOf });
})();
