/* Which tree is meant.
 *
 * In: the index and a query. Out: what was understood, the safety lines, the strong hits, best first,
 * and what is nearest where no tree fits. The same as `find/ranking.py` and `code_matches.py`,
 * function by function, with the figures from there; one table of cases holds both together. Whole numbers
 * throughout, so that both come to the same scores.
 */
"use strict";
(() => {
  const search = baytreeSearch;
  const { splitWords, opposite, shopTokens, measureCoverage, shareOf, strengthOf } = search;
  const { rules } = baytreeSearchData;

  // code_matches.py

  function scoreCodes(index, codes) {
    const points = new Map();
    for (const code of codes) {
      const best = new Map();
      for (const name of search.codeNames(index, code))
        for (const [entry, place, failureType = ""] of index.codes.get(name) ?? []) {
          const ofPlace = Math.floor(rules.codes.placePoints / (1 + place));
          const worth = rules.codes.points * typePoints(code, failureType) + ofPlace;
          best.set(entry, Math.max(best.get(entry) ?? 0, worth));
        }
      for (const [entry, worth] of best) points.set(entry, (points.get(entry) ?? 0) + worth);
    }
    return points;
  }

  function typePoints(code, failureType) {
    if (["", failureType].includes(code.failureType)) return 3;
    return failureType ? 1 : 2;
  }

  function codeMeanings(index, codes) {
    return codes.flatMap((code) => {
      const names = search.codeNames(index, code);
      return (names.length ? names : [code.digits]).map((name) => [
        code.failureType ? `${name}-${code.failureType}` : name,
        index.codeMeanings.get(name) ?? "",
      ]);
    });
  }

  // ranking.py

  // What a guess names is left aside if a tree fits what is told beside it.
  function answerQuery(index, asked) {
    const told = search.withoutGuesses(asked);
    const answer = told && saysWhat(index, told) && answerTo(index, asked, told);
    return answer && answer.trees ? answer : answerTo(index, asked, asked);
  }

  const TELLING = ["subject", "lone", "complaint"];

  const saysWhat = (index, told) =>
    queryConcepts(search.parseQuery(told, index), index)
      .some((concept) => TELLING.includes(search.kindOf(concept, index)));

  function answerTo(index, asked, told) {
    const query = search.parseQuery(told, index);
    const concepts = queryConcepts(query, index);
    const scored = scoreEntries(index, query, concepts);
    const fitting = scored.filter(({ entry }) => isAbout(index, query.vehicle, entry));
    const strong = strongOnes(index, fitting);
    const trees = strong.filter((one) => isTree(index, one)).length;
    const understood = {
      codes: codeMeanings(index, query.codes),
      vehicle: query.vehicle,
      corrected: query.corrected,
      slang: search.slangIn(concepts, query.words),
      unknown: query.unknown,
      otherVehicles: fitting.length < scored.length
        ? strongOnes(index, scored).length - strong.length : 0,
    };
    const hits = strong.slice(0, rules.mostHits).map((one) => hitOf(index, one));
    const safety = search.safetyLines(search.parseQuery(asked, index).words);
    return { understood, safety, hits, trees, nearest: trees ? [] : nearest(index, fitting) };
  }

  function queryConcepts({ words, completions }, index) {
    const tokens = shopTokens(words, index.book);
    const concepts = search.findConcepts(tokens, index.book);
    if (!completions.length || !concepts.length) return concepts;
    const negated = tokens.at(-1).startsWith("!");
    const wordings = new Map();
    for (const word of completions) {
      const plain = search.dropStopWords(shopTokens([word], index.book));
      const wording = negated ? plain.map(opposite) : plain;
      if (wording.length) wordings.set(wording.join(" "), wording);
    }
    const alternatives = [...wordings.values()];
    // Of a word that can only become a stop word, nothing is asked.
    const last = alternatives.length ? [{ alternatives, words: 1, slang: [] }] : [];
    return [...concepts.slice(0, -1), ...last];
  }

  function codeConcepts({ codes }, index) {
    const text = codeMeanings(index, codes).map(([, meaning]) => meaning).join(" ");
    return search.findConcepts(shopTokens(splitWords(text), index.book), index.book);
  }

  function scoreEntries(index, query, concepts) {
    if (!query.codes.length && !concepts.length) {
      const own = (entry) => entry.vehicles.length && search.isVehicle(query.vehicle);
      const coverage = measureCoverage([], index);
      return index.entries.flatMap((entry, at) =>
        (own(entry) ? [{ entry: at, score: 1, coverage, strength: rules.certain }] : []));
    }
    const points = scoreCodes(index, query.codes);
    const byMeaning = query.codes.length ? measureCoverage(codeConcepts(query, index), index) : null;
    const unlisted = points.size ? 0 : query.codes.length;
    const byWords = concepts.length || points.size
      ? measureCoverage(concepts, index, unlisted) : byMeaning;
    const scored = [];
    for (let entry = 0; entry < index.entries.length; entry++)
      if (points.has(entry) || byWords.phrase[entry] >= 0)
        scored.push(scoreEntry(index, entry, points.get(entry) ?? 0, byWords, byMeaning));
    return scored;
  }

  function scoreEntry(index, entry, points, coverage, byMeaning) {
    const raised = 100 + rules.titleRaise * Math.min(coverage.inTitle[entry], 2);
    const ofWords = Math.floor((coverageScore(coverage, entry) * raised) / 100);
    return {
      entry, coverage,
      score: points + ofWords + (points ? coverageScore(byMeaning, entry) : 0),
      strength: points ? rules.certain : sureOf(index, entry, coverage, coverage === byMeaning),
    };
  }

  function sureOf(index, entry, coverage, isCode) {
    const points = strengthOf(coverage, entry, index.entries.length);
    const { named, has } = coverage;
    const kinds = named.subject || named.lone ? ["subject", "lone"] : ["complaint"];
    const hasAll = kinds.some((kind) => named[kind] > 0)
      && kinds.every((kind) => has[kind][entry] === named[kind]);
    return isCode && !hasAll ? Math.min(points, 0) : points;
  }

  function coverageScore(coverage, entry) {
    const share = shareOf(coverage, entry);
    const whole = coverage.gain[entry] * share * share * (100 + coverage.fit[entry]);
    return Math.floor(whole / 100000000);
  }

  function isAbout(index, asked, entry) {
    const { vehicles } = index.entries[entry];
    return !search.isVehicle(asked) || !vehicles.length
      || vehicles.some((at) => search.vehicleFits(asked, index.vehicles[at]));
  }

  const isTree = (index, { entry }) => index.entries[entry].kind === "tree";

  function putArticlesSecond(index, scored) {
    const trees = scored.filter((one) => isTree(index, one));
    if (!trees.length) return scored;
    const most = highest(trees, "score");
    return scored.map((one) =>
      (isTree(index, one) ? one : { ...one, score: Math.min(one.score, most) }));
  }

  function strongOnes(index, scored) {
    const strong = putArticlesSecond(index, scored.filter(({ strength }) => strength > 0));
    const [score, sure] = [highest(strong, "score"), highest(strong, "strength")];
    const good = strong.filter((one) =>
      one.score * rules.tailScore >= Math.max(score, 1) && one.strength * rules.tailStrength >= sure);
    return inOrder(index, putArticlesSecond(index, good));
  }

  const highest = (scored, name) => scored.reduce((most, one) => Math.max(most, one[name]), 0);

  function inOrder(index, scored) {
    const id = ({ entry }) => index.entries[entry].id;
    return [...scored].sort((one, other) => other.score - one.score
      || Number(isTree(index, other)) - Number(isTree(index, one)) || (id(one) < id(other) ? -1 : 1));
  }

  function nearest(index, scored) {
    const near = scored.filter((one) =>
      isTree(index, one) && one.coverage.subjectInTitle[one.entry] > 0);
    return inOrder(index, near).slice(0, rules.mostNearest).map((one) => hitOf(index, one));
  }

  function hitOf(index, { entry, score, coverage }) {
    const { id, kind, draft, first } = index.entries[entry];
    const best = index.phrases[coverage.phrase[entry]];
    return {
      id, title: search.textOf(index.phrases[first]), kind, score,
      phrase: best ? search.textOf(best) : "", share: shareOf(coverage, entry), draft,
    };
  }

  search.answerQuery = answerQuery;
})();
