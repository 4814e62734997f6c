"""How sure the search is that an entry is about a query.

In: what an entry covers of a query. Out: points; above 0 the hit is strong and shown, below it the
shop has nothing on this. What the entry covers speaks for it: its share of the query, how much of
its best phrase that is, how much the words tell apart, and whether its title has all of them. A
query that names a part asks for more; one that the entry hasn't got, and that nobody names in
passing, for most: `dome light stays on` is no matter of the charging lamp. So does a complaint that
it hasn't got, and what is no complaint: a price, a size. A short query is about all that it names,
even about an unknown word; in a long story other parts are blamed and passed. The points were
fitted (logistic regression) to the query sets of `tests/demo/` and others. The page does the same
(`search-coverage.js`).
"""

from builder.find.concept_kinds import COMPLAINT, LONE, SUBJECT
from builder.find.coverage import QueryCoverage
from builder.find.covered_concepts import rarity
from builder.find.mentions import Mentions

MOST_EVIDENCE = 400  # percent of the rarest word; more tells no more
EVIDENCE = 44  # percent that it counts
PHRASE = 80  # percent that the covered part of the best phrase counts
WHOLE_TITLE = 40  # points, if the title has all that was asked for

ASKED = 135  # points that any query asks of an entry
ONE_WORD = 120  # less, if the query is one word: it is a look around
NAMED_SUBJECT = 48  # more, if it names one
LONE_MISSING = 60  # more, for each lone subject that the entry hasn't
NO_COMPLAINT = 40  # more, if it names some and the entry has none
EACH_ERRAND = 115  # more, for each thing asked for that is no complaint
SHORT_MISSING = 40  # more, if a short query names a subject that the entry hasn't
SHORT_STRANGE = 24  # more, if it has an unknown word
SHORT_UNTITLED = 56  # more, if it says two things and more, and the title has none of them


def strength(coverage: QueryCoverage, entry: int, entries: int) -> int:
    """Points for and against an entry, of a shop with so many entries."""
    if entry not in coverage.phrases:
        return -ASKED
    mentions = coverage.mentions
    evidence = min(coverage.gain[entry] // rarity(entries, 1), MOST_EVIDENCE)
    points = (
        coverage.share(entry)
        + coverage.phrases[entry].covered * PHRASE // 100
        + evidence * EVIDENCE // 100
        + (WHOLE_TITLE if mentions.in_title.get(entry, 0) == mentions.telling else 0)
    )
    return points - _asked(mentions, entry)


def _asked(mentions: Mentions, entry: int) -> int:
    """The points that are asked for."""
    asked = ASKED - (ONE_WORD if mentions.is_one_word else 0) + mentions.errands * EACH_ERRAND
    missing = {
        kind: number - mentions.has[kind].get(entry, 0) for kind, number in mentions.named.items()
    }
    asked += NAMED_SUBJECT if mentions.named[SUBJECT] or mentions.named[LONE] else 0
    asked += missing[LONE] * LONE_MISSING
    asked += (
        NO_COMPLAINT if mentions.named[COMPLAINT] and not mentions.has[COMPLAINT].get(entry) else 0
    )
    if not mentions.is_short:
        return asked
    return asked + _asked_by_short(mentions, entry, missing[SUBJECT] + missing[LONE])


def _asked_by_short(mentions: Mentions, entry: int, missing: int) -> int:
    """What a short query asks for besides."""
    is_untitled = mentions.telling > 1 and not mentions.in_title.get(entry)
    return (
        (SHORT_MISSING if missing else 0)
        + (SHORT_STRANGE if mentions.strange else 0)
        + (SHORT_UNTITLED if is_untitled else 0)
    )
