/* The symptom index, unpacked.
 *
 * In: `search-data.js`, as `find/page_data.py` and `find/packed_texts.py` pack it. Out: entries,
 * phrases, and where each word and code stands. What the words of a phrase mean is told there.
 */
"use strict";
(() => {
  const { STOP_WORDS, NEGATIONS, splitWords, stemWord, withoutNo, shopTokens } =
    baytreeSearch;

  function unpackIndex(data) {
    const words = data.words.map(wordOf);
    const book = bookOf(data);
    const index = {
      data, words, book, phrases: [], postings: new Map(),
      entries: [
        ...data.trees.map((row) => treeOf(row, data)),
        ...data.articles.map((row) => articleOf(row, data)),
      ],
      codes: codesOf(data.trees),
      codeMeanings: new Map(Object.entries(data.codeMeanings)),
      vehicles: data.vehicles.map(vehicleOf),
      trade: data.trade.map((phrases) => tokensOf(phrases, book)),
      covered: new Map(), // what was covered by concepts that were asked for
    };
    for (const [at, { texts }] of index.entries.entries())
      for (const [text, weight] of texts) addPhrase(index, at, text, weight);
    return { ...index, ...vocabularyOf(words, data) };
  }

  function wordOf(row) {
    const [written, meaning] = row.split(" ");
    const concepts = meaning?.split("&") ?? splitWords(written).map(stemWord);
    return { written, uses: 0, concepts: meaning === "-" ? [] : concepts };
  }

  // Phrases of the shop, and subjects of several words, which mean nothing else.
  function bookOf({ synonyms, phrases, trade }) {
    const inPlace = Object.entries(synonyms).map(([token, terms]) => [token, terms.split(" ")]);
    const book = { synonyms: new Map(inPlace), starts: new Map() };
    const all = new Map(phrases.map(([text, terms, slang = []]) => [text, { terms, slang }]));
    const [subjects, lone] = trade;
    for (const subject of [...subjects.split(", "), ...lone.split(", ")]) {
      const text = shopTokens(splitWords(subject), book).join(" ");
      if (text.includes(" ") && !all.has(text)) all.set(text, { terms: [], slang: [] });
    }
    for (const [text, { terms, slang }] of [...all].sort(longestFirst)) {
      const tokens = text.split(" ");
      const phrase = { tokens, terms: terms.map((term) => term.split(" ")), slang };
      push(book.starts, withoutNo(tokens[0]), phrase);
    }
    return book;
  }

  const longestFirst = ([one], [other]) =>
    other.split(" ").length - one.split(" ").length || (one < other ? -1 : 1);

  function tokensOf(phrases, book) {
    const each = phrases.split(", ").map((phrase) => shopTokens(splitWords(phrase), book).join(" "));
    return new Set(each);
  }

  // Each code with the trees that list it, its place there, and its failure type.
  function codesOf(trees) {
    const codes = new Map();
    for (const [entry, row] of trees.entries())
      for (const [place, code] of row[3].split(" ").filter(Boolean).entries()) {
        const [name, ...failureType] = code.split("-");
        push(codes, name, [entry, place, ...failureType]);
      }
    return codes;
  }

  function treeOf([id, own, context, , vehicles, draft], data) {
    const [system, lent] = data.contexts[context];
    const texts = [...ownTexts(own, data), ...lent];
    const symptoms = texts.length - lent.length - 1; // behind the title
    return { id, kind: "tree", texts, symptoms, system, vehicles, draft: Boolean(draft) };
  }

  const articleOf = ([id, own], data) =>
    ({ id, kind: "article", texts: ownTexts(own, data), system: "", vehicles: [], draft: false });

  const ownTexts = (packed, { rules }) => packed.split(" ").map((text) => [text, rules.ownWeight]);

  const vehicleOf = ([make, model, first, last]) =>
    ({ make, model, first, last, makeWords: splitWords(make), modelWords: splitWords(model) });

  function addPhrase(index, entry, text, weight) {
    const words = unpackNumbers(text, index.data.digits).map((number) => index.words[number]);
    const concepts = new Set(words.flatMap((word) => word.concepts));
    // What stands there as one thing is a token, too: `spare tire`.
    const tokens = new Set([...concepts].flatMap((concept) => {
      const parts = concept.split("+");
      return [...parts, parts.join(" ")];
    }));
    for (const token of tokens) push(index.postings, token, index.phrases.length);
    for (const word of words) word.uses++;
    const { kind, first } = index.entries[entry];
    const isTitle = first === undefined && kind === "tree"; // an article has nothing else
    index.entries[entry].first ??= index.phrases.length;
    index.phrases.push({ entry, words, weight, length: concepts.size, isTitle });
  }

  function unpackNumbers(text, [digits, leading]) {
    const numbers = [];
    let rest = 0;
    for (const character of text) {
      const digit = digits.indexOf(character);
      if (digit < leading) rest = rest * leading + digit + 1;
      else {
        numbers.push(rest * (digits.length - leading) + digit - leading);
        rest = 0;
      }
    }
    return numbers;
  }

  // What customers say of a tree.
  const symptomsOf = ({ phrases }, { first, symptoms }) =>
    phrases.slice(first + 1, first + 1 + symptoms).map(textOf);

  const textOf = (phrase) => phrase.words.map((word) => word.written).join(" ");

  function vocabularyOf(words, data) {
    const spoken = new Map();
    for (const { written, uses } of words)
      for (const word of splitWords(written)) spoken.set(word, (spoken.get(word) ?? 0) + uses);
    const others = [...STOP_WORDS, ...NEGATIONS, ...data.otherWords.split(" ")];
    const everyday = new Set(data.rules.everyday.split(" "));
    const ofTrade = [...baytreeSearch.dangerWords(), ...splitWords(data.trade.join(" "))];
    const unsaid = ofTrade.filter((word) => !everyday.has(word))
      .map((word) => [word, data.rules.unsaid]);
    const known = new Map([...unsaid, ...others.map((word) => [word, 0]), ...spoken]);
    const [stems, stemUses] = [new Map(), new Map()];
    for (const [word, uses] of [...known].sort(mostUsedFirst))
      if (!stems.has(stemWord(word))) {
        stems.set(stemWord(word), word);
        stemUses.set(stemWord(word), uses);
      }
    const plain = [...STOP_WORDS, ...everyday].map((word) => [word, 0]);
    return { spoken, known, stems, stemUses, everyday, plain, little: new Set([...everyday].map(stemWord)) };
  }

  const mostUsedFirst = ([one, uses], [other, otherUses]) =>
    otherUses - uses || (one < other ? -1 : 1);

  function push(map, key, value) {
    if (map.has(key)) map.get(key).push(value);
    else map.set(key, [value]);
  }

  Object.assign(baytreeSearch, { unpackIndex, unpackNumbers, symptomsOf, textOf });
})();
