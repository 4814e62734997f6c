"""Which tree is meant.

In: the index and a query. Out: `SearchAnswer`: what was understood, the safety lines, the strong
hits, best first, and what is nearest where no tree fits. Whole numbers throughout, so that the
page's script (`search-rank.js`) comes to the same scores.

A concept (a word, or a slang phrase with its terms) covers a phrase with a credit of 0 to 100. The
score of a tree is the rarity of the concepts that it covers, times the square of the share of the
query that they are, times up to two for how well its best single phrase fits, raised where its
title has them. A code counts more than all words together. Articles come second: none stands above
the best tree. Whether a hit is strong enough to be shown is another question: `strength.py`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from builder.find.asked_vehicles import AskedVehicle, vehicle_fits
from builder.find.code_matches import code_meanings, score_codes
from builder.find.concept_kinds import COMPLAINT, LONE, SUBJECT
from builder.find.coverage import QueryCoverage, measure_coverage
from builder.find.covered_concepts import kind_of
from builder.find.guesses import without_guesses
from builder.find.phrasebook import Concept, find_concepts, shop_tokens, slang_in
from builder.find.safety import safety_lines
from builder.find.search_query import Correction, SearchQuery, parse_query, query_concepts
from builder.find.search_table import WordRow
from builder.find.strength import strength
from builder.find.symptom_index import SymptomIndex
from builder.find.word_forms import split_words

MOST_HITS = 12  # handed back
CERTAIN = 1000  # strength of what a code or a vehicle finds
# A hit with less than an eighth of the best score, or a fourth of the best strength, is left out.
TAIL_SCORE = 8
TAIL_STRENGTH = 4
TITLE_RAISE = 30  # percent, for each of up to two concepts that the title has
MOST_NEAREST = 2  # trees of the same subject, where none fits


@dataclass(frozen=True, slots=True)
class SearchHit:
    """A tree or an article that was found."""

    id: str
    title: str
    kind: str  # tree | article
    score: int
    phrase: str  # of it, that fits best; "" if it was found by a code or a vehicle
    share: int  # percent of the query that it covers
    draft: bool


@dataclass(frozen=True, slots=True)
class Understanding:
    """What the search made of the query."""

    codes: tuple[tuple[str, str], ...]  # each with the shop's own words for it, or ""
    vehicle: AskedVehicle
    corrected: tuple[Correction, ...]
    slang: tuple[WordRow, ...]  # a phrase, its proper terms; several: which?
    unknown: tuple[str, ...]
    other_vehicles: int  # hits left out because they are about other vehicles


@dataclass(frozen=True, slots=True)
class SearchAnswer:
    """What was understood, what was found, and what is nearest where no tree was."""

    understood: Understanding
    safety: tuple[str, ...]  # what to mind before anything else
    hits: tuple[SearchHit, ...]  # strong ones only
    trees: int  # how many trees there are, beyond the hits that are handed back
    nearest: tuple[SearchHit, ...]  # trees that share the subject, where no tree fits


@dataclass(frozen=True, slots=True)
class ScoredEntry:
    """An entry with its score, before it is known whether it fits the vehicle."""

    entry: int
    score: int
    phrase: int  # -1 if none
    share: int
    strength: int  # above 0 it is strong
    shares_subject: bool = False  # its title has a part that the query names


def answer_query(index: SymptomIndex, asked: str) -> SearchAnswer:
    """Rank the entries of an index for a query; the same query gives the same answer, always.

    What a guess names is left aside if a tree fits what is told beside it.
    """
    told = without_guesses(asked)
    answer = _answer(index, asked, told) if told and _says_what(index, told) else None
    return answer if answer and answer.trees else _answer(index, asked, asked)


def _says_what(index: SymptomIndex, told: str) -> bool:
    """Whether a text names a part or a complaint."""
    concepts = query_concepts(parse_query(told, index), index)
    return any(kind_of(concept, index) in (SUBJECT, LONE, COMPLAINT) for concept in concepts)


def _answer(index: SymptomIndex, asked: str, told: str) -> SearchAnswer:
    query = parse_query(told, index)
    concepts = query_concepts(query, index)
    scored = _score_entries(index, query, concepts)
    fitting = [one for one in scored if _is_about(index, query.vehicle, one.entry)]
    strong = _strong_ones(index, fitting)
    trees = sum(_is_tree(index, one) for one in strong)
    understood = Understanding(
        codes=code_meanings(index, query.codes),
        vehicle=query.vehicle,
        corrected=query.spelled.corrected,
        slang=slang_in(concepts, query.spelled.words),
        unknown=query.spelled.unknown,
        other_vehicles=len(_strong_ones(index, scored)) - len(strong),
    )
    return SearchAnswer(
        understood,
        safety_lines(parse_query(asked, index).spelled.words),
        tuple(_hit(index, one) for one in strong[:MOST_HITS]),
        trees,
        () if trees else _nearest(index, fitting),
    )


def _code_concepts(query: SearchQuery, index: SymptomIndex) -> list[Concept]:
    """What the codes mean, as if it had been typed."""
    text = " ".join(meaning for _, meaning in code_meanings(index, query.codes))
    return find_concepts(shop_tokens(split_words(text), index.book.synonyms), index.book)


def _score_entries(
    index: SymptomIndex, query: SearchQuery, concepts: Sequence[Concept]
) -> list[ScoredEntry]:
    """Every entry with a score: by its codes, by the words, by what the codes mean.

    Codes that no entry lists are searched by their meaning, which must name something, and
    nothing that the entry hasn't; a vehicle alone finds its own trees.
    """
    if not query.codes and not concepts:
        own = [at for at, one in enumerate(index.entries) if one.vehicles and query.vehicle]
        return [ScoredEntry(at, 1, -1, 0, CERTAIN) for at in own]
    points = score_codes(index, query.codes)
    by_meaning = measure_coverage(_code_concepts(query, index), index)
    unlisted = 0 if points else len(query.codes)
    by_words = measure_coverage(concepts, index, unlisted) if concepts or points else by_meaning
    return [
        _score_entry(entry, points.get(entry, 0), by_words, by_meaning, len(index.entries))
        for entry in {*points, *by_words.gain}
    ]


def _score_entry(
    entry: int, points: int, by_words: QueryCoverage, by_meaning: QueryCoverage, entries: int
) -> ScoredEntry:
    raised = 100 + TITLE_RAISE * min(by_words.mentions.in_title.get(entry, 0), 2)
    score = points + _coverage_score(by_words, entry) * raised // 100
    if points:
        score += _coverage_score(by_meaning, entry)
    return ScoredEntry(
        entry,
        score,
        by_words.phrases[entry].phrase if entry in by_words.phrases else -1,
        by_words.share(entry),
        CERTAIN if points else _sure_of(by_words, entry, entries, is_code=by_words is by_meaning),
        shares_subject=entry in by_words.mentions.subjects_in_title,
    )


def _sure_of(coverage: QueryCoverage, entry: int, entries: int, *, is_code: bool) -> int:
    """How strong the hit is; by the meaning of a code, only with all parts that this names.

    Where it names none, the complaint decides.
    """
    points = strength(coverage, entry, entries)
    named, has = coverage.mentions.named, coverage.mentions.has
    kinds = (SUBJECT, LONE) if named[SUBJECT] or named[LONE] else (COMPLAINT,)
    is_about = any(named[kind] for kind in kinds) and all(
        named[kind] == has[kind].get(entry, 0) for kind in kinds
    )
    return min(points, 0) if is_code and not is_about else points


def _coverage_score(coverage: QueryCoverage, entry: int) -> int:
    """Rarity, times the square of the share, times one to two for the best phrase."""
    if entry not in coverage.gain:
        return 0
    share = coverage.share(entry)
    return coverage.gain[entry] * share * share * (100 + coverage.fit(entry)) // 100_000_000


def _is_about(index: SymptomIndex, asked: AskedVehicle, entry: int) -> bool:
    vehicles = index.entries[entry].vehicles
    return not asked or not vehicles or any(vehicle_fits(asked, vehicle) for vehicle in vehicles)


def _is_tree(index: SymptomIndex, one: ScoredEntry) -> bool:
    return index.entries[one.entry].kind == "tree"


def _strong_ones(index: SymptomIndex, scored: Sequence[ScoredEntry]) -> list[ScoredEntry]:
    """The strong ones without their weak tail, best first; of equals trees first, then by ID."""
    strong = _put_articles_second(index, [one for one in scored if one.strength > 0])
    score = max((one.score for one in strong), default=0)
    sure = max((one.strength for one in strong), default=0)
    good = [
        one
        for one in strong
        if one.score * TAIL_SCORE >= max(score, 1) and one.strength * TAIL_STRENGTH >= sure
    ]
    # Where a tail was cut that had the best tree, an article may stand above those that are left.
    return _in_order(index, _put_articles_second(index, good))


def _put_articles_second(index: SymptomIndex, scored: Sequence[ScoredEntry]) -> list[ScoredEntry]:
    """No article stands above the best tree."""
    trees = [one.score for one in scored if _is_tree(index, one)]
    if not trees:
        return [*scored]
    most = max(trees)
    return [
        one if _is_tree(index, one) else replace(one, score=min(one.score, most)) for one in scored
    ]


def _in_order(index: SymptomIndex, scored: Sequence[ScoredEntry]) -> list[ScoredEntry]:
    def place(one: ScoredEntry) -> tuple[int, bool, str]:
        return -one.score, not _is_tree(index, one), index.entries[one.entry].id

    return sorted(scored, key=place)


def _nearest(index: SymptomIndex, scored: Sequence[ScoredEntry]) -> tuple[SearchHit, ...]:
    """Trees that share the subject of the query; none where it names none that they have."""
    near = [one for one in scored if one.shares_subject and _is_tree(index, one)]
    return tuple(_hit(index, one) for one in _in_order(index, near)[:MOST_NEAREST])


def _hit(index: SymptomIndex, one: ScoredEntry) -> SearchHit:
    entry = index.entries[one.entry]
    phrase = index.phrases[one.phrase].text if one.phrase >= 0 else ""
    return SearchHit(entry.id, entry.title, entry.kind, one.score, phrase, one.share, entry.draft)
