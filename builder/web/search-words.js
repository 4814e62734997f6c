/* A query as words, tokens and concepts.
 *
 * In: what was typed, and the phrasebook of the index. Out: words (`wont`, `crank`), tokens
 * (`!crank`) and concepts. The same as `find/word_forms.py` and `find/phrasebook.py`, function by
 * function, with the lists from there; one table of cases holds both together.
 */
"use strict";
globalThis.baytreeSearch = (() => {
  const { stopWords, negations, measures, numberWords, units, ordinary, endings, gap: GAP } =
    baytreeSearchData.rules;
  const STOP_WORDS = new Set(stopWords.split(" "));
  const NEGATIONS = new Set(negations.split(" "));
  const MEASURES = new Set(measures.split(" "));
  const NUMBER_WORDS = new Set(numberWords.split(" "));
  const UNITS = new RegExp(units, "g");
  const ENDINGS = endings.map(([pattern, instead]) => [new RegExp(`^${pattern}$`, "u"), instead]);

  // word_forms.py

  function splitWords(text) {
    const plain = text.replace(/['’‘`´]/g, "").normalize("NFKD").toLowerCase();
    const bare = plain.replace(/\p{M}/gu, "").replace(/\b([a-z])\/([a-z])\b/g, "$1$2")
      .replace(UNITS, "$1 $2");
    return bare.match(/[\p{L}\p{N}]+/gu) ?? [];
  }

  const LETTERS = /^\p{L}+$/u, isAllLetters = (word) => LETTERS.test(word);
  const stems = new Map();

  function stemWord(word) {
    if (!stems.has(word)) stems.set(word, takeOffEndings(word));
    return stems.get(word);
  }

  function takeOffEndings(word) {
    if (word.length < 4 || !isAllLetters(word)) return word;
    return ENDINGS.reduce((stem, [ending, instead]) => {
      const match = stem.match(ending);
      return match ? match[1] + instead : stem;
    }, word.replaceAll("z", "s"));
  }

  const ORDINARY_STEMS = new Set(ordinary.split(" ").map(stemWord));

  function stemWords(words) {
    const tokens = [];
    let no = "";
    for (const word of withoutMeasures(words)) {
      if (NEGATIONS.has(word)) no = "!";
      else if (STOP_WORDS.has(word)) tokens.push(word);
      else {
        tokens.push(no + stemWord(word));
        no = "";
      }
    }
    return tokens;
  }

  const NUMBER = /^\p{Nd}+$/u;

  function withoutMeasures(words) {
    const isNumber = (word = "") => NUMBER.test(word) || NUMBER_WORDS.has(word);
    const starts = (at) => isNumber(words[at]) && MEASURES.has(words[at + 1]);
    return words.filter((_, at) => !starts(at) && !starts(at - 1));
  }

  const dropStopWords = (tokens) =>
    [...new Set(tokens.filter((token) => !STOP_WORDS.has(token)))];
  const withoutNo = (token) => (token.startsWith("!") ? token.slice(1) : token);
  const opposite = (token) => (token.startsWith("!") ? token.slice(1) : `!${token}`);

  // phrasebook.py

  const shopTokens = (words, book) =>
    stemWords(words).flatMap((token) => inPlace(token, book.synonyms));

  function inPlace(token, synonyms) {
    const plain = withoutNo(token);
    if (synonyms.has(token) || !synonyms.has(plain)) return synonyms.get(token) ?? [token];
    return withNo(synonyms.get(plain));
  }

  const withNo = ([first, ...others]) => [opposite(first), ...others];

  function findConcepts(tokens, book) {
    const concepts = new Map();
    for (let at = 0; at < tokens.length; ) {
      const [concept, length] = phraseAt(tokens, at, book) ?? [wordConcept(tokens[at]), 1];
      if (concept) concepts.set(nameOf(concept), concept);
      at += length;
    }
    return [...concepts.values()];
  }

  const nameOf = ({ alternatives }) => alternatives.map((words) => words.join(" ")).join("|");

  const wordConcept = (token) =>
    STOP_WORDS.has(token) ? null : { alternatives: [[token]], words: 1, slang: [] };

  function phraseAt(tokens, at, book) {
    for (const phrase of book.starts.get(withoutNo(tokens[at])) ?? [])
      for (const negated of [false, true]) {
        const length = lengthAt(tokens, at, phrase, negated);
        if (length) return [phraseConcept(phrase, tokens.slice(at, at + length), negated), length];
      }
    return null;
  }

  function phraseConcept({ terms, slang }, tokens, negated) {
    const own = terms.length ? dropStopWords(tokens) : tokens; // `heads up`
    const all = [own, ...(negated ? terms.map(withNo) : terms)];
    const wordings = new Map(all.map((words) => [words.join(" "), words]));
    wordings.delete("");
    const alternatives = [...wordings.values()];
    return { alternatives, words: alternatives[0].length, slang };
  }

  function lengthAt(tokens, at, phrase, negated) {
    let [end, gap] = [at, phrase.terms.length ? GAP : 0];
    for (const word of phrase.tokens) {
      while (gap && at < end && end < tokens.length && tokens[end] !== word
             && STOP_WORDS.has(tokens[end])) {
        gap--;
        end++;
      }
      if (end === tokens.length) return 0;
      if (word !== (negated ? withoutNo(tokens[end]) : tokens[end])) return 0;
      end++;
    }
    return end - at;
  }

  function slangIn(concepts, words) {
    const rows = concepts.flatMap(({ slang }) => slang);
    return rows.filter(([phrase]) => splitWords(phrase).every((word) => words.includes(word)));
  }

  return {
    STOP_WORDS, NEGATIONS, ORDINARY_STEMS, splitWords, isAllLetters, stemWord, dropStopWords, withoutNo, opposite,
    shopTokens, findConcepts, nameOf, slangIn,
  };
})();
