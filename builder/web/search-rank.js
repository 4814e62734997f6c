/* Which tree is meant.
 *
 * In: the index and a query. Out: what was understood, the hits, best first, and where to look
 * instead. The same as `find/cover.py`, `meant.py`, `offers.py` and `rank.py`, function by function;
 * one table of cases holds both together. Whole numbers throughout, so that both come to the same
 * scores.
 */
"use strict";
(() => {
  const find = globalThis.baytreeFind;
  const { surfaces, content, flipped, tally } = find;

  // cover.py

  const OPPOSITE = 50;
  const LIGHT = 30;

  function add(counts, at, number) {
    if (!counts.of[at]) counts.at[counts.size++] = at;
    counts.of[at] += number;
  }

  function raise(counts, at, number) {
    if (number > counts.of[at]) add(counts, at, number - counts.of[at]);
  }

  const touched = (counts) => counts.at.subarray(0, counts.size);

  function emptied(counts) {
    for (const at of touched(counts)) counts.of[at] = 0;
    counts.size = 0;
    return counts;
  }

  function cover(parts, index) {
    const entries = index.entries.length;
    const [gain, credit] = [tally(entries), tally(entries)];
    const phraseGain = emptied(index.tallies.phraseGain);
    const phraseCredit = emptied(index.tallies.phraseCredit);
    let [most, words] = [0, 0];
    for (const part of parts) {
      const { inEntries, often, inPhrases, ...found } = covered(part, index);
      const counts = weight(part, index);
      const rare = Math.floor((found.rare * counts) / 100);
      words += wordsOf(part) * counts;
      most += rare * 100;
      for (let at = 0; at < often.length; at++) {
        add(gain, inEntries.at[at], often[at] * rare);
        add(credit, inEntries.at[at], inEntries.of[at] * wordsOf(part) * counts);
      }
      for (let at = 0; at < inPhrases.at.length; at++) {
        add(phraseGain, inPhrases.at[at], inPhrases.of[at] * rare);
        add(phraseCredit, inPhrases.at[at], inPhrases.of[at]);
      }
    }
    return { words, gain, credit, ...bestPhrases(index, phraseGain, phraseCredit, most) };
  }

  function weight({ alternatives }, index) {
    const alone = alternatives.length === 1 && alternatives[0].length === 1;
    return alone && index.little.has(find.plain(alternatives[0][0])) ? LIGHT : 100;
  }

  const wordsOf = (part) => (part.phrase ? part.alternatives[0].length : 1);

  // What a concept covers is kept: the same words are asked for again with every letter typed.
  function covered(part, index) {
    const key = part.alternatives.map((words) => words.join(" ")).join("|");
    if (!index.seen.has(key)) {
      if (index.seen.size === 200) index.seen.clear();
      index.seen.set(key, coveredAnew(part, index));
    }
    return index.seen.get(key);
  }

  function coveredAnew(part, index) {
    const credits = coveredPhrases(part, index);
    const [best, count] = byEntry(credits, index);
    const inEntries = packed(best);
    const often = inEntries.at.map((entry) =>
      Math.floor((best.of[entry] * (9 + Math.min(count.of[entry], 4))) / 10));
    const having = inEntries.of.filter((credit) => credit > 50).length;
    const rare = rarity(index.entries.length, having);
    return { rare, inEntries, often, inPhrases: packed(credits) };
  }

  function packed(counts) {
    const at = touched(counts).slice();
    return { at, of: at.map((number) => counts.of[number]) };
  }

  // The best phrase of an entry is kept as its number and one, so that 0 is none.
  function bestPhrases(index, gain, credit, most) {
    const entries = index.entries.length;
    const fit = new Int32Array(entries);
    const best = new Int32Array(entries);
    for (const at of touched(gain)) {
      const entry = index.entryOf[at];
      const recall = Math.floor((gain.of[at] * 100) / most);
      const fits = fitOf(recall, Math.floor(credit.of[at] / index.phrases[at].length));
      if (!best[entry] || fits > fit[entry] || (fits === fit[entry] && at + 1 < best[entry])) {
        fit[entry] = fits;
        best[entry] = at + 1;
      }
    }
    return { fit, phrase: best };
  }

  const share = (covered, entry) =>
    covered.words ? Math.floor(covered.credit.of[entry] / covered.words) : 0;

  function coveredPhrases(part, index) {
    const credits = emptied(index.tallies.credits);
    for (const words of part.alternatives) {
      const totals = wordsFound(words, index);
      for (const phrase of touched(totals)) {
        const found = Math.floor(totals.of[phrase] / words.length);
        const whole = found === 100 ? found : Math.floor((found * found) / 100);
        raise(credits, phrase, Math.floor((whole * index.weightOf[phrase]) / 100));
      }
    }
    return credits;
  }

  function wordsFound(words, index) {
    const totals = emptied(index.tallies.totals);
    for (const token of words) {
      const own = index.postings.get(token) ?? [];
      const opposite = index.postings.get(flipped(token)) ?? [];
      for (const phrase of own) add(totals, phrase, 100);
      if (opposite.length) {
        const taken = new Set(own);
        for (const phrase of opposite) if (!taken.has(phrase)) add(totals, phrase, OPPOSITE);
      }
    }
    return totals;
  }

  function byEntry(inPhrases, index) {
    const { best, count } = index.tallies;
    emptied(best);
    emptied(count);
    for (const phrase of touched(inPhrases)) {
      raise(best, index.entryOf[phrase], inPhrases.of[phrase]);
      add(count, index.entryOf[phrase], 1);
    }
    return [best, count];
  }

  const rarity = (entries, having) =>
    Math.floor(100 * Math.log(1 + entries / Math.max(1, having)) + 0.5);

  function fitOf(recall, precision) {
    const most = Math.min(precision, 100);
    return recall + most ? Math.floor((2 * recall * most) / (recall + most)) : 0;
  }

  // meant.py

  const POINT = 1000000;
  const FIRST = 1000;

  function codePoints(index, codes) {
    const points = new Map();
    for (const code of codes) {
      const best = new Map();
      for (const name of namesOf(index, code))
        for (const listed of index.codes.get(name) ?? []) {
          const worth = POINT * typePoints(code, listed) + Math.floor(FIRST / (1 + listed.place));
          best.set(listed.entry, Math.max(best.get(listed.entry) ?? 0, worth));
        }
      for (const [entry, worth] of best) points.set(entry, (points.get(entry) ?? 0) + worth);
    }
    return points;
  }

  function typePoints(code, listed) {
    if (["", listed.failureType].includes(code.failureType)) return 3;
    return listed.failureType ? 1 : 2;
  }

  const namesOf = (index, code) =>
    code.letter ? [code.letter + code.digits] : (index.digits.get(code.digits) ?? []);

  function codeWords(index, codes) {
    return codes.flatMap((code) => {
      const names = namesOf(index, code);
      return (names.length ? names : [code.digits]).map((name) => [
        code.failureType ? `${name}-${code.failureType}` : name,
        index.codeSays.get(name) ?? "",
      ]);
    });
  }

  // offers.py

  function offers(rows, query) {
    const systems = new Set(rows.trees.map((tree) => tree[2]));
    const lamps = new Set(rows.trees.flatMap((tree) => tree[3]));
    const offer = (kind) => ([id, name]) => ({ kind, id, name });
    return [
      ...nearestOf(rows.systems.filter((_, at) => systems.has(at)).map(offer("system")), query),
      ...nearestOf(rows.lamps.filter((_, at) => lamps.has(at)).map(offer("lamp")), query),
    ];
  }

  function nearestOf(found, query) {
    const liked = found.map((offer) => ({ offer, like: likeness(query, offer.name) }));
    liked.sort((one, other) =>
      other.like - one.like || (one.offer.name < other.offer.name ? -1 : 1));
    return liked.slice(0, 6).map(({ offer }) => offer);
  }

  function likeness(one, other) {
    const [ours, theirs] = [pairs(one), pairs(other)];
    const shared = [...ours].filter((pair) => theirs.has(pair)).length;
    return Math.floor((200 * shared) / Math.max(1, ours.size + theirs.size));
  }

  const pairs = (text) =>
    new Set(surfaces(text).flatMap((word) =>
      Array.from({ length: word.length - 1 }, (_, at) => word.slice(at, at + 2))));

  // rank.py

  const MOST = 12;
  const WEAK = 20;

  function rank(index, query) {
    const asked = find.question(query, index);
    const parts = askedConcepts(asked, index);
    const { fitting, others } = scored(index, asked, parts);
    const hits = bestOf(index, articlesSecond(index, fitting));
    const understood = {
      codes: codeWords(index, asked.codes),
      vehicle: asked.vehicle,
      corrected: asked.spelt.corrected,
      slang: find.slangSaid(parts, asked.spelt.words, index.book),
      unknown: asked.spelt.unknown,
      otherVehicles: others,
    };
    const weak = !hits.length || (hits[0].score < POINT && hits[0].share < 50);
    return { understood, hits, offers: weak ? offers(index.rows, query) : [] };
  }

  function askedConcepts(asked, index) {
    const found = find.shopWords(asked.spelt.words, index.book.same);
    const parts = find.concepts(found, index.book);
    if (asked.spelt.started.length && parts.length) {
      const negated = found.at(-1).startsWith("!");
      const words = new Map(asked.spelt.started
        .map((word) => begun(word, index, negated))
        .map((word) => [word.join(" "), word]));
      words.delete("");
      parts[parts.length - 1] = { alternatives: [...words.values()], phrase: "" };
    }
    return parts;
  }

  function begun(word, index, negated) {
    const found = content(find.shopWords([word], index.book.same));
    return negated ? found.map(flipped) : found;
  }

  function codeConcepts(asked, index) {
    const text = codeWords(index, asked.codes).map(([, says]) => says).join(" ");
    return find.concepts(find.shopWords(surfaces(text), index.book.same), index.book);
  }

  function scored(index, asked, parts) {
    const points = codePoints(index, asked.codes);
    const meant = cover(codeConcepts(asked, index), index);
    const said = parts.length || points.size ? cover(parts, index) : meant;
    if (!asked.codes.length && !parts.length) {
      const own = (entry) => entry.vehicles.length && find.isVehicle(asked.vehicle);
      const owning = index.entries.flatMap((entry, at) => (own(entry) ? [at] : []));
      const alike = (entry) => ({ entry, score: 1, phrase: -1, share: 0 });
      return fittingOf(index, asked.vehicle, owning, alike);
    }
    const only = [...points.keys()].filter((entry) => !said.gain.of[entry]);
    return fittingOf(index, asked.vehicle, [...only, ...touched(said.gain)], (entry) =>
      score(entry, points.get(entry) ?? 0, said, meant));
  }

  // What is too weak beside the best tree is dropped on the way: ten thousand trees share words.
  function fittingOf(index, vehicle, entries, scoreOf) {
    const fitting = [];
    let [others, best] = [0, 0];
    for (const entry of entries) {
      if (!fitsVehicle(index, vehicle, entry)) { others++; continue; }
      const hit = scoreOf(entry);
      if (index.entries[entry].kind === "tree") best = Math.max(best, hit.score);
      if (hit.score >= Math.floor(best / WEAK)) fitting.push(hit);
    }
    return { fitting, others };
  }

  function score(entry, points, said, meant) {
    const byMeaning = points ? wordScore(meant, entry) : 0;
    return {
      entry,
      score: points + wordScore(said, entry) + byMeaning,
      phrase: said.phrase[entry] - 1,
      share: share(said, entry),
    };
  }

  function wordScore(covered, entry) {
    const part = share(covered, entry);
    const whole = covered.gain.of[entry] * part * part * (100 + covered.fit[entry]);
    return Math.floor(whole / 100000000);
  }

  function fitsVehicle(index, asked, entry) {
    const { vehicles } = index.entries[entry];
    if (!find.isVehicle(asked) || !vehicles.length) return true;
    return vehicles.some((vehicle) => find.fits(asked, vehicle));
  }

  function articlesSecond(index, found) {
    const isTree = (hit) => index.entries[hit.entry].kind === "tree";
    const best = found.reduce((most, hit) => (isTree(hit) ? Math.max(most, hit.score) : most), 0);
    for (const hit of best ? found : [])
      if (!isTree(hit)) hit.score = Math.min(hit.score, best - 1);
    return found;
  }

  function bestOf(index, found) {
    const id = (hit) => index.entries[hit.entry].id;
    const precedes = (one, other) =>
      one.score > other.score || (one.score === other.score && id(one) < id(other));
    const top = []; // in order, and never more than are handed back
    for (const hit of found) {
      if (!hit.score || (top.length === MOST && !precedes(hit, top[MOST - 1]))) continue;
      const after = top.findIndex((other) => precedes(hit, other));
      top.splice(after < 0 ? top.length : after, 0, hit);
      top.length = Math.min(top.length, MOST);
    }
    const least = top.length ? Math.floor(top[0].score / WEAK) : 0;
    return top.filter((hit) => hit.score >= least).map((hit) => hitOf(index, hit));
  }

  function hitOf(index, found) {
    const { id, title, kind, draft } = index.entries[found.entry];
    const said = found.phrase >= 0 ? index.phrases[found.phrase].text : "";
    return { id, title, kind, score: found.score, said, share: found.share, draft };
  }

  find.rank = rank;
})();
