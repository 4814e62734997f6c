"""Which of the things that a query names an entry mentions, and where.

In: the concepts of a query, each with what covers it, and how many of its codes no entry lists;
each is a subject that none has. Out: `Mentions`. The page counts the same
(`search-coverage.js`).
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from builder.find.concept_kinds import COMPLAINT, ERRAND, EVERYDAY, LONE, STRANGE, SUBJECT
from builder.find.covered_concepts import CLEAR_CREDIT, CoveredConcept, Credits, add_credits

SHORT_QUERY = 4  # concepts at most: what it names is what it is about
PART_CREDIT = 40  # so much of a subject or a complaint is enough for it to be the same
NAMED = (SUBJECT, LONE, COMPLAINT)  # kinds that are counted


@dataclass(frozen=True, slots=True)
class Mentions:
    """What a query names, and how much of that stands in each entry."""

    is_one_word: bool  # all of the query
    is_short: bool
    strange: int  # how many words are unknown
    errands: int  # how many ask for something that is no complaint
    telling: int  # how many concepts the query has, everyday words and errands apart
    named: Mapping[str, int]  # how many subjects and complaints it has
    has: Mapping[str, Mapping[int, int]]  # of these, how many an entry has
    in_title: Mapping[int, int]  # of the telling ones, how many its title has
    subjects_in_title: Mapping[int, int]  # of the subjects, how many its title has


def count_mentions(covered: Sequence[CoveredConcept], unlisted: int) -> Mentions:
    """Count over the concepts of a query."""
    named = {kind: sum(one.kind == kind for one in covered) for kind in NAMED}
    named[SUBJECT] += unlisted
    telling = [one for one in covered if one.kind not in (ERRAND, EVERYDAY)]
    subjects = [one for one in covered if one.kind in (SUBJECT, LONE)]
    return Mentions(
        is_one_word=len(covered) == 1 == covered[0].words and not unlisted,
        is_short=len(covered) <= SHORT_QUERY and not any(one.blames for one in covered),
        strange=sum(one.kind == STRANGE for one in covered),
        errands=sum(one.kind == ERRAND for one in covered),
        telling=len(telling),
        named=named,
        has={
            kind: _count((one.best for one in covered if one.kind == kind), PART_CREDIT)
            for kind in named
        },
        in_title=_count((one.in_titles for one in telling), CLEAR_CREDIT),
        subjects_in_title=_count((one.in_titles for one in subjects), CLEAR_CREDIT),
    )


def _count(each: Iterable[Credits], least: int) -> Credits:
    """How many of them give an entry more credit than that."""
    counts: Credits = {}
    for credits in each:
        add_credits(counts, {entry: 1 for entry, credit in credits.items() if credit > least}, 1)
    return counts
