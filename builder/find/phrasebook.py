"""The shop's words: what means the same, and slang with its proper terms.

In: pairs of a phrase and its terms, from `kb/words.yml`. Out: a `Phrasebook` that finds the longest
phrase at a place among tokens. `same words` are put in place of one another on both sides; slang
is one alternative beside its terms. Mirrored by `search-words.js`.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from builder.find.words import content, flipped, surfaces, tokens

Tokens = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Phrasebook:
    """Phrases, as tokens, and what they mean."""

    terms: Mapping[Tokens, tuple[Tokens, ...]]
    said: Mapping[Tokens, str]  # the phrase as the shop wrote it
    means: Mapping[Tokens, tuple[str, ...]]  # its terms as the shop wrote them
    longest: int


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
    phrase: Tokens = ()  # the slang it came from


def phrasebook(
    pairs: Iterable[tuple[str, Sequence[str]]], same: Phrasebook | None = None
) -> Phrasebook:
    """Make a book; with `same`, both sides are first put into the words that mean the same."""
    terms: dict[Tokens, tuple[Tokens, ...]] = {}
    said: dict[Tokens, str] = {}
    means: dict[Tokens, tuple[str, ...]] = {}
    for phrase, meanings in pairs:
        key = tuple(_tokens(phrase, same))
        if key and key not in terms:
            terms[key] = tuple(tuple(content(_tokens(meaning, same))) for meaning in meanings)
            said[key], means[key] = phrase, tuple(meanings)
    return Phrasebook(terms, said, means, max(map(len, terms), default=0))


def _tokens(text: str, same: Phrasebook | None) -> list[str]:
    found = tokens(surfaces(text))
    return in_same_words(found, same) if same else found


def match_at(found: Sequence[str], at: int, book: Phrasebook) -> Match | None:
    """The longest phrase that starts at a place: with its "no" as written, else a "no" on it."""
    for length in range(min(book.longest, len(found) - at), 0, -1):
        here = tuple(found[at : at + length])
        if here in book.terms:
            return Match(here, length, negated=False)
        plain = tuple(token.removeprefix("!") for token in here)
        if plain in book.terms:
            return Match(plain, length, negated=True)
    return None


def in_same_words(found: Sequence[str], same: Phrasebook) -> list[str]:
    """Put the shop's one word in the place of each that means the same, longest phrase first."""
    made: list[str] = []
    at = 0
    while at < len(found):
        match = match_at(found, at, same)
        if match:
            made += _with_no(same.terms[match.phrase][0], match.negated)
        else:
            made.append(found[at])
        at += match.length if match else 1
    return made


def concepts(found: Sequence[str], slang: Phrasebook) -> list[Concept]:
    """Part tokens into concepts: a slang phrase with its terms, or a word that says something."""
    made: list[Concept] = []
    at = 0
    while at < len(found):
        match = match_at(found, at, slang)
        if match:
            own = tuple(content(found[at : at + match.length]))
            terms = tuple(_with_no(term, match.negated) for term in slang.terms[match.phrase])
            made.append(Concept((own, *terms), match.phrase))
        else:
            made += [Concept(((token,),)) for token in content(found[at : at + 1])]
        at += match.length if match else 1
    return list({concept.alternatives: concept for concept in made if concept.alternatives[0]}
                .values())  # fmt: skip


def _with_no(term: Tokens, negated: bool) -> Tokens:
    return (flipped(term[0]), *term[1:]) if negated and term else term
