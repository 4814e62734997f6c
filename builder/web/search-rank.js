/* Which tree is meant.
 *
 * In: the index and a query. Out: what was understood, the hits, best first, and where to look
 * instead. The same as `find/ranking.py`, `code_matches.py` and `suggestions.py`, function by
 * function, with the figures from there; one table of cases holds both together. Whole numbers
 * throughout, so that both come to the same scores.
 */
"use strict";
(() => {
  const search = baytreeSearch;
  const { splitWords, opposite, shopTokens, measureCoverage, shareOf } = search;
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

  // suggestions.py

  function suggestPlaces(places, query) {
    const like = new Map(places.map((place) => [place, likeness(query, place[2])]));
    const nearest = [...places].sort((one, other) =>
      like.get(other) - like.get(one) || (one[2] < other[2] ? -1 : 1));
    const ofKind = (kind) =>
      nearest.filter((place) => place[0] === kind).slice(0, rules.mostSuggestions);
    return [...ofKind("system"), ...ofKind("lamp")].map(([kind, id, name]) => ({ kind, id, name }));
  }

  function likeness(one, other) {
    const [ours, theirs] = [letterPairs(one), letterPairs(other)];
    const shared = [...ours].filter((pair) => theirs.has(pair)).length;
    return Math.floor((200 * shared) / Math.max(1, ours.size + theirs.size));
  }

  const letterPairs = (text) => new Set(splitWords(text).flatMap((word) =>
    Array.from({ length: word.length - 1 }, (_, at) => word.slice(at, at + 2))));

  // ranking.py

  function answerQuery(index, asked) {
    const query = search.parseQuery(asked, index);
    const concepts = queryConcepts(query, index);
    const scored = scoreEntries(index, query, concepts);
    const fitting = scored.filter(({ entry }) => isAbout(index, query.vehicle, entry));
    const hits = bestHits(index, putArticlesSecond(index, fitting));
    const understood = {
      codes: codeMeanings(index, query.codes),
      vehicle: query.vehicle,
      corrected: query.corrected,
      slang: search.slangIn(concepts, query.words),
      unknown: query.unknown,
      otherVehicles: scored.length - fitting.length,
    };
    const isWeak = !hits.length
      || (hits[0].score < rules.codes.points && hits[0].share < rules.fullAnswer);
    return { understood, hits, suggestions: isWeak ? suggestPlaces(index.data.places, asked) : [] };
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
      return index.entries.flatMap((entry, at) =>
        (own(entry) ? [{ entry: at, score: 1, coverage: measureCoverage([], index) }] : []));
    }
    const points = scoreCodes(index, query.codes);
    const byMeaning = query.codes.length ? measureCoverage(codeConcepts(query, index), index) : null;
    const byWords = concepts.length || points.size ? measureCoverage(concepts, index) : byMeaning;
    const scored = [];
    for (let entry = 0; entry < index.entries.length; entry++) {
      if (!points.has(entry) && byWords.phrase[entry] < 0) continue;
      const ofCodes = points.has(entry) ? points.get(entry) + coverageScore(byMeaning, entry) : 0;
      scored.push({ entry, score: ofCodes + coverageScore(byWords, entry), coverage: byWords });
    }
    return scored;
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
    const most = trees.reduce((best, { score }) => Math.max(best, score), 0) - 1;
    return scored.map((one) =>
      (isTree(index, one) ? one : { ...one, score: Math.min(one.score, most) }));
  }

  function bestHits(index, scored) {
    const most = scored.reduce((best, { score }) => Math.max(best, score), 0);
    const least = Math.max(1, Math.floor(most / rules.weakShare));
    const id = ({ entry }) => index.entries[entry].id;
    const good = scored.filter(({ score }) => score >= least);
    good.sort((one, other) => other.score - one.score || (id(one) < id(other) ? -1 : 1));
    return good.slice(0, rules.mostHits).map((one) => hitOf(index, one));
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
