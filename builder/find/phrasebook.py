"""The shop's words: what means the same, and slang with its proper terms.

In: rows of `kb/words.yml`. Out: a `Phrasebook`, and the concepts of a text by it. One word that
means the same as another is put in its place (`tyre` for `tire`). A phrase, and all slang, becomes
a concept: its own words or any of its terms will do. The longest phrase goes first. The page gets
the book as it is, and takes a query apart by it in the same way (`search-words.js`).
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.find.common_words import STOP_WORDS
from builder.find.search_table import WordRow
from builder.find.word_forms import drop_stop_words, opposite, split_words, stem_words, without_no

Tokens = tuple[str, ...]

GAP = 2  # stop words that may stand inside a phrase: `battery (keeps) dying`


@dataclass(frozen=True, slots=True)
class BookPhrase:
    """A phrase of the book, and what it means."""

    tokens: Tokens
    terms: tuple[Tokens, ...]
    slang: tuple[WordRow, ...] = ()  # of these, the slang as written


@dataclass(frozen=True, slots=True)
class Phrasebook:
    """Words and phrases, as tokens, and what they mean."""

    synonyms: Mapping[str, Tokens]  # a token to those in its place
    starts: Mapping[str, tuple[BookPhrase, ...]]  # a first token to its phrases, longest first


@dataclass(frozen=True, slots=True)
class Concept:
    """One thing that a text says: any of its alternatives stands for it."""

    alternatives: tuple[Tokens, ...]
    words: int = 1  # how many words say it
    slang: tuple[WordRow, ...] = ()

    @property
    def tokens(self) -> Tokens:
        """The tokens of all alternatives, each once."""
        return tuple(dict.fromkeys(token for words in self.alternatives for token in words))


def make_phrasebook(
    slang: Sequence[WordRow], same: Sequence[WordRow], subjects: Iterable[str] = ()
) -> Phrasebook:
    """Make a book; plain words may add to what a slang phrase leads to, without being shown.

    A subject of several words (`dome light`) is one phrase, though it means nothing else.
    """
    synonyms: dict[str, Tokens] = {}
    plain: list[WordRow] = []
    for row in same:
        tokens = stem_words(split_words(row.phrase))
        if len(tokens) == 1:
            synonyms.setdefault(tokens[0], drop_stop_words(stem_words(split_words(row.terms[0]))))
        elif tokens:
            plain.append(row)
    phrases: dict[Tokens, BookPhrase] = {}
    for row in slang:
        _add_phrase(phrases, row, synonyms, is_slang=True)
    for row in plain:
        _add_phrase(phrases, row, synonyms, is_slang=False)
    for subject in subjects:
        together = tuple(shop_tokens(split_words(subject), synonyms))
        if len(together) > 1 and drop_stop_words(together):
            phrases.setdefault(together, BookPhrase(together, ()))
    return Phrasebook(synonyms, _by_first_token(phrases.values()))


def _add_phrase(
    phrases: dict[Tokens, BookPhrase],
    row: WordRow,
    synonyms: Mapping[str, Tokens],
    *,
    is_slang: bool,
) -> None:
    tokens = tuple(shop_tokens(split_words(row.phrase), synonyms))
    each = (drop_stop_words(shop_tokens(split_words(term), synonyms)) for term in row.terms)
    terms = tuple(term for term in each if term)
    if not tokens or not terms:
        return
    known = phrases.get(tokens, BookPhrase(tokens, ()))
    more = () if is_slang and known.slang else terms
    slang = (*known.slang, row) if is_slang else known.slang
    phrases[tokens] = BookPhrase(tokens, (*known.terms, *more), slang)


def _by_first_token(phrases: Iterable[BookPhrase]) -> dict[str, tuple[BookPhrase, ...]]:
    starts: dict[str, tuple[BookPhrase, ...]] = {}
    for phrase in sorted(phrases, key=lambda phrase: (-len(phrase.tokens), phrase.tokens)):
        first = without_no(phrase.tokens[0])
        starts[first] = (*starts.get(first, ()), phrase)
    return starts


def shop_tokens(words: Iterable[str], synonyms: Mapping[str, Tokens]) -> list[str]:
    """Tokens of words, with the shop's one word in the place of each that means the same."""
    return [token for typed in stem_words(words) for token in _in_place(typed, synonyms)]


def _in_place(token: str, synonyms: Mapping[str, Tokens]) -> Tokens:
    plain = without_no(token)
    if token in synonyms or plain not in synonyms:
        return synonyms.get(token, (token,))
    return _with_no(synonyms[plain])


def _with_no(term: Tokens) -> Tokens:
    return (opposite(term[0]), *term[1:]) if term else term


def find_concepts(tokens: Sequence[str], book: Phrasebook) -> list[Concept]:
    """Part tokens into concepts: phrases of the book, and words that say something."""
    concepts = {concept.alternatives: concept for concept in _each_concept(tokens, book)}
    return list(concepts.values())


def _each_concept(tokens: Sequence[str], book: Phrasebook) -> Iterator[Concept]:
    at = 0
    while at < len(tokens):
        concept, length = _phrase_at(tokens, at, book)
        if concept:
            yield concept
        elif tokens[at] not in STOP_WORDS:
            yield Concept(((tokens[at],),))
        at += length or 1


def _phrase_at(tokens: Sequence[str], at: int, book: Phrasebook) -> tuple[Concept | None, int]:
    """The longest phrase that starts at a place: with its "no" as written, else a "no" on it.

    With it, how many tokens it takes up.
    """
    for phrase in book.starts.get(without_no(tokens[at]), ()):
        for negated in (False, True):
            length = _length_at(tokens, at, phrase, negated=negated)
            if length:
                said = tokens[at : at + length]
                own = drop_stop_words(said) if phrase.terms else tuple(said)  # `heads up`
                terms = [_with_no(term) for term in phrase.terms] if negated else phrase.terms
                wordings = tuple(dict.fromkeys(words for words in (own, *terms) if words))
                return Concept(wordings, len(wordings[0]), phrase.slang), length
    return None, 0


def _length_at(tokens: Sequence[str], at: int, phrase: BookPhrase, *, negated: bool) -> int:
    """How many tokens a phrase takes up at a place, stop words between its own included, or 0.

    A subject stands as it is: who must `stop at a light` speaks of no `stop light`.
    """
    end = at
    gap = GAP if phrase.terms else 0
    for word in phrase.tokens:
        while gap and at < end < len(tokens) and tokens[end] != word and tokens[end] in STOP_WORDS:
            gap -= 1
            end += 1
        if end == len(tokens) or word != (without_no(tokens[end]) if negated else tokens[end]):
            return 0
        end += 1
    return end - at


def slang_in(concepts: Iterable[Concept], words: Iterable[str]) -> tuple[WordRow, ...]:
    """The slang among concepts that was said in these words, and not in others."""
    typed = set(words)
    rows = [row for concept in concepts for row in concept.slang]
    return tuple(row for row in rows if set(split_words(row.phrase)) <= typed)
