"""The shop's words: what means the same, and slang with its proper terms.

In: rows of `kb/words.yml`. Out: a `Phrasebook`. One word that means the same as another is put in
its place (`tyre` for `tire`), on both sides. A phrase, and all slang, becomes a concept: its own
words or any of its terms will do. The longest phrase goes first. Mirrored by `search-words.js`.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.find.words import STOP, content, flipped, surfaces, tokens

Tokens = tuple[str, ...]
Pair = tuple[str, tuple[str, ...]]  # a word or phrase, and its terms

GAP = 2  # stop words that may stand inside a phrase: `battery (keeps) dying`


@dataclass(frozen=True, slots=True)
class Phrasebook:
    """Words and phrases, as tokens, and what they mean."""

    same: Mapping[str, Tokens]  # a token to those in its place
    terms: Mapping[Tokens, tuple[Tokens, ...]]  # a phrase to its terms
    slang: Mapping[Tokens, tuple[Pair, ...]]  # of these, slang and its terms as written
    starts: Mapping[str, tuple[Tokens, ...]]  # a first token to its phrases, longest first


@dataclass(frozen=True, slots=True)
class Match:
    """A phrase of the book found among tokens; `negated` if a "no" stands on it."""

    phrase: Tokens
    length: int
    negated: bool


@dataclass(frozen=True, slots=True)
class Concept:
    """One thing that was said: any of its alternatives stands for it."""

    alternatives: tuple[Tokens, ...]
    phrase: Tokens = ()  # the phrase of the book that it came from

    @property
    def words(self) -> int:
        """How many words said it."""
        return len(self.alternatives[0]) if self.phrase else 1


def phrasebook(slang: Iterable[Pair], same: Iterable[Pair]) -> Phrasebook:
    """Make a book; plain words may add to what a slang phrase leads to, without being shown."""
    plain = [(tokens(surfaces(phrase)), phrase, terms) for phrase, terms in same]
    one_word = {found[0]: tuple(content(tokens(surfaces(terms[0]))))
                for found, _, terms in reversed(plain) if len(found) == 1}  # fmt: skip
    phrases = [(phrase, terms) for found, phrase, terms in plain if len(found) > 1]
    meant: dict[Tokens, tuple[Tokens, ...]] = {}
    written: dict[Tokens, tuple[Pair, ...]] = {}
    for phrase, terms in slang:
        key = tuple(shop_words(surfaces(phrase), one_word))
        if key:
            meant.setdefault(key, _terms(terms, one_word))
            written[key] = (*written.get(key, ()), (phrase, terms))
    for phrase, terms in phrases:
        key = tuple(shop_words(surfaces(phrase), one_word))
        meant[key] = (*meant.get(key, ()), *_terms(terms, one_word))
    return Phrasebook(one_word, meant, written, _starts(meant))


def slang_said(
    parts: Iterable[Concept], words: Sequence[str], book: Phrasebook
) -> tuple[Pair, ...]:
    """The slang among concepts that was said in these surfaces, and not in other words."""
    pairs = [pair for part in parts for pair in book.slang.get(part.phrase, ())]
    return tuple(pair for pair in pairs if set(surfaces(pair[0])) <= set(words))


def _starts(phrases: Iterable[Tokens]) -> dict[str, tuple[Tokens, ...]]:
    starts: dict[str, tuple[Tokens, ...]] = {}
    for phrase in sorted(phrases, key=lambda phrase: (-len(phrase), phrase)):
        first = _plain(phrase[0])
        starts[first] = (*starts.get(first, ()), phrase)
    return starts


def _terms(terms: Sequence[str], same: Mapping[str, Tokens]) -> tuple[Tokens, ...]:
    return tuple(tuple(content(shop_words(surfaces(term), same))) for term in terms)


def shop_words(words: Iterable[str], same: Mapping[str, Tokens]) -> list[str]:
    """Tokens of surfaces, with the shop's one word in the place of each that means the same."""
    return [token for found in tokens(words) for token in _in_place(found, same)]


def _in_place(token: str, same: Mapping[str, Tokens]) -> Tokens:
    plain = _plain(token)
    if token in same or plain not in same:
        return same.get(token, (token,))
    return _with_no(same[plain], negated=True)


def concepts(found: Sequence[str], book: Phrasebook) -> list[Concept]:
    """Part tokens into concepts: phrases of the book, and words that say something."""
    made = {concept.alternatives: concept for concept in _each_concept(found, book)}
    return list(made.values())


def _each_concept(found: Sequence[str], book: Phrasebook) -> Iterator[Concept]:
    at = 0
    while at < len(found):
        match = _match(found, at, book)
        if match:
            own = tuple(content(found[at : at + match.length]))
            terms = [_with_no(term, negated=match.negated) for term in book.terms[match.phrase]]
            wordings = dict.fromkeys(words for words in (own, *terms) if words)
            yield Concept(tuple(wordings), match.phrase)
        elif found[at] not in STOP:
            yield Concept(((found[at],),))
        at += match.length if match else 1


def _match(found: Sequence[str], at: int, book: Phrasebook) -> Match | None:
    """The longest phrase that starts at a place: with its "no" as written, else a "no" on it."""
    for phrase in book.starts.get(_plain(found[at]), ()):
        for negated in (False, True):
            length = _length(found, at, phrase, negated=negated)
            if length:
                return Match(phrase, length, negated)
    return None


def _length(found: Sequence[str], at: int, phrase: Tokens, *, negated: bool) -> int:
    """How many tokens a phrase takes up at a place, stop words between its own included, or 0."""
    end = at
    gap = GAP
    for word in phrase:
        while gap and at < end < len(found) and found[end] != word and found[end] in STOP:
            gap -= 1
            end += 1
        if end == len(found) or word != (_plain(found[end]) if negated else found[end]):
            return 0
        end += 1
    return end - at


def _plain(token: str) -> str:
    return token.removeprefix("!")


def _with_no(term: Tokens, *, negated: bool) -> Tokens:
    return (flipped(term[0]), *term[1:]) if negated and term else term
