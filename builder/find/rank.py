"""Which tree is meant.

In: the index and a query. Out: `Answer`: what was understood, the hits, best first, and where to
look instead when nothing fits well. Whole numbers throughout, so that the page's script
(`web/search-rank.js`) comes to the same scores.

A concept (a word, or a slang phrase with its terms) covers a phrase with a credit of 0 to 100. The
score of a tree is the rarity of the concepts that it covers, times the square of the share of the
query that they are, times up to two for how well its best single phrase fits. A code counts more
than all words together. Articles come second: none stands above the best tree.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.find.cover import Cover, cover
from builder.find.index import Index
from builder.find.meant import POINT, code_points, code_words
from builder.find.offers import Offer, offers
from builder.find.phrasebook import Concept, Tokens, concepts, shop_words, slang_said
from builder.find.question import Question, question
from builder.find.rows import VehicleRow
from builder.find.vehicles import AskedVehicle, fits
from builder.find.words import content, flipped, surfaces

MOST = 12  # hits handed back
WEAK = 20  # a hit with less than a twentieth of the best score is left out


@dataclass(frozen=True, slots=True)
class Hit:
    """A tree or an article that was found."""

    id: str
    title: str
    kind: str  # tree | how-to
    score: int
    said: str  # the phrase of it that fits best, "" if it was found by a code or a vehicle
    share: int  # percent of the query that it covers
    draft: bool = False


@dataclass(frozen=True, slots=True)
class Understood:
    """What the search made of the query."""

    codes: tuple[tuple[str, str], ...]  # each with the shop's own words for it, or ""
    vehicle: AskedVehicle
    corrected: tuple[tuple[str, str], ...]  # as typed, as taken
    slang: tuple[tuple[str, tuple[str, ...]], ...]  # a phrase, its proper terms; several: which?
    unknown: tuple[str, ...]
    other_vehicles: int  # hits left out because they are about other vehicles


@dataclass(frozen=True, slots=True)
class Answer:
    """What was understood, what was found, and where to look instead."""

    understood: Understood
    hits: tuple[Hit, ...]
    offers: tuple[Offer, ...]


@dataclass(frozen=True, slots=True)
class Scored:
    """An entry with its score, before it is known whether it fits the vehicle."""

    entry: int
    score: int
    phrase: int  # -1 if none
    share: int


def rank(index: Index, query: str) -> Answer:
    """Rank the entries of an index for a query; the same query gives the same answer, always."""
    asked = question(query, index)
    parts = asked_concepts(asked, index)
    found = _scored(index, asked, parts)
    fitting = [hit for hit in found if _fits(index, asked.vehicle, hit.entry)]
    hits = _best(index, _articles_second(index, fitting))
    understood = Understood(
        codes=code_words(index, asked.codes),
        vehicle=asked.vehicle,
        corrected=asked.spelt.corrected,
        slang=slang_said(parts, asked.spelt.words, index.book),
        unknown=asked.spelt.unknown,
        other_vehicles=len(found) - len(fitting),
    )
    weak = not hits or (hits[0].score < POINT and hits[0].share < 50)
    return Answer(understood, hits, offers(index.table, query) if weak else ())


def asked_concepts(asked: Question, index: Index) -> list[Concept]:
    """The concepts of a query; the last may be any word that begins as it does."""
    found = shop_words(asked.spelt.words, index.book.same)
    parts = concepts(found, index.book)
    if asked.spelt.started and parts:
        negated = found[-1].startswith("!")
        words = (_begun(word, index, negated=negated) for word in asked.spelt.started)
        parts[-1] = Concept(tuple(dict.fromkeys(word for word in words if word)))
    return parts


def _begun(word: str, index: Index, *, negated: bool) -> Tokens:
    found = content(shop_words([word], index.book.same))
    return tuple(flipped(token) if negated else token for token in found)


def _code_concepts(asked: Question, index: Index) -> list[Concept]:
    """What the codes mean, as if it had been typed."""
    text = " ".join(says for _, says in code_words(index, asked.codes))
    return concepts(shop_words(surfaces(text), index.book.same), index.book)


def _scored(index: Index, asked: Question, parts: Sequence[Concept]) -> list[Scored]:
    """Every entry with a score: by its codes, by the words, by what the codes mean.

    Codes that no entry lists are searched by their meaning; a vehicle alone finds its own trees.
    """
    points = code_points(index, asked.codes)
    meant = cover(_code_concepts(asked, index), index)
    said = cover(parts, index) if parts or points else meant
    if not asked.codes and not parts:
        own = [at for at, entry in enumerate(index.entries) if entry.vehicles and asked.vehicle]
        return [Scored(at, 1, -1, 0) for at in own]
    return [
        _score(entry, points.get(entry, 0), said, meant) for entry in sorted({*points, *said.gain})
    ]


def _score(entry: int, points: int, said: Cover, meant: Cover) -> Scored:
    score = points + _word_score(said, entry)
    if points:
        score += _word_score(meant, entry)
    return Scored(entry, score, said.phrase.get(entry, -1), said.share(entry))


def _word_score(covered: Cover, entry: int) -> int:
    """Rarity, times the square of the share, times one to two for the best phrase."""
    if entry not in covered.gain:
        return 0
    share = covered.share(entry)
    return covered.gain[entry] * share * share * (100 + covered.fit[entry]) // 100_000_000


def _fits(index: Index, asked: AskedVehicle, entry: int) -> bool:
    vehicles: Sequence[VehicleRow] = index.entries[entry].vehicles
    return not asked or not vehicles or any(fits(asked, vehicle) for vehicle in vehicles)


def _articles_second(index: Index, found: Sequence[Scored]) -> list[Scored]:
    """No article stands above the best tree."""
    trees = [hit.score for hit in found if index.entries[hit.entry].kind == "tree"]
    most = max(trees) - 1 if trees else max((hit.score for hit in found), default=0)
    return [
        hit if index.entries[hit.entry].kind == "tree" else replace(hit, score=min(hit.score, most))
        for hit in found
    ]


def _best(index: Index, found: Sequence[Scored]) -> tuple[Hit, ...]:
    """The best hits in order; equal scores stand by id."""
    most = max((hit.score for hit in found), default=0)
    good = [hit for hit in found if hit.score >= max(1, most // WEAK)]
    good.sort(key=lambda hit: (-hit.score, index.entries[hit.entry].id))
    return tuple(_hit(index, hit) for hit in good[:MOST])


def _hit(index: Index, found: Scored) -> Hit:
    entry = index.entries[found.entry]
    said = index.phrases[found.phrase].text if found.phrase >= 0 else ""
    return Hit(entry.id, entry.title, entry.kind, found.score, said, found.share, entry.draft)
