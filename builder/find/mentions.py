"""Which of the things that a query names an entry mentions, and where.

In: the concepts of a query, each with what covers it, and how many of its codes no entry lists;
each is a subject that none has. Out: `Mentions`. The page counts the same
(`search-coverage.js`).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from builder.find.concept_kinds import COMPLAINT, ERRAND, EVERYDAY, LONE, SUBJECT
from builder.find.covered_concepts import CLEAR_CREDIT, CoveredConcept, Credits, add_credits

PART_CREDIT = 40  # an entry with more than this of a subject or a complaint has it
NAMED = (SUBJECT, LONE, COMPLAINT)  # kinds that are counted


@dataclass(frozen=True, slots=True)
class Mentions:
    """What a query names, and how much of that stands in each entry."""

    brevity: int  # 2 if the query says one thing, 1 for two, 0 for more
    errands: int  # how many ask for something that is no complaint
    everyday: int  # how many are everyday words
    named: Mapping[str, int]  # how many subjects and complaints it has
    has: Mapping[str, Mapping[int, int]]  # of these, how many an entry has
    said: Mapping[int, int]  # how many words of the query an entry says
    in_title: Mapping[int, int]  # how many its title has, everyday words and errands apart
    subjects_in_title: Mapping[int, int]  # of the subjects, how many its title has


def count_mentions(covered: Sequence[CoveredConcept], unlisted: int) -> Mentions:
    """Count over the concepts of a query."""
    named = {kind: sum(one.kind == kind for one in covered) for kind in NAMED}
    named[LONE] += unlisted
    telling = [one for one in covered if one.kind not in (ERRAND, EVERYDAY)]
    subjects = [one for one in covered if one.kind in (SUBJECT, LONE)]
    return Mentions(
        brevity=0 if unlisted else max(0, 3 - len(covered)),
        errands=sum(one.kind == ERRAND for one in covered),
        everyday=sum(one.kind == EVERYDAY for one in covered),
        named=named,
        has={
            kind: _count((one.best for one in covered if one.kind == kind), PART_CREDIT)
            for kind in named
        },
        said=_count_words(covered),
        in_title=_count((one.in_titles for one in telling), CLEAR_CREDIT),
        subjects_in_title=_count((one.in_titles for one in subjects), CLEAR_CREDIT),
    )


def _count_words(covered: Sequence[CoveredConcept]) -> Credits:
    """How many words of the query each entry says: all those of the concepts that it has."""
    counts: Credits = {}
    for one in covered:
        add_credits(counts, _having(one.best, CLEAR_CREDIT), one.words)
    return counts


def _count(each: Iterable[Credits], least: int) -> Credits:
    """How many of them give an entry more credit than that."""
    counts: Credits = {}
    for credits in each:
        add_credits(counts, _having(credits, least), 1)
    return counts


def _having(credits: Credits, least: int) -> Credits:
    return {entry: 1 for entry, credit in credits.items() if credit > least}
