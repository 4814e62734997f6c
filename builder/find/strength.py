"""How sure the search is that an entry is about a query.

In: what an entry covers of a query. Out: points; above 0 the hit is strong and shown, below it the
shop has nothing on this. What the entry covers speaks for it: its share of the query, how much of
its best phrase that is, how much the words tell apart, and whether its title has them. A part that
the query names asks for more, and most of an entry that hasn't got it; so does a complaint: `dome
light stays on` is no matter of the charging lamp. A short query is about all that it names, even
about an unknown word; in a long story other parts are blamed and passed. The points were
fitted to the query sets of `tests/demo/`. The page does the same (`search-coverage.js`).
"""

from builder.find.concept_kinds import COMPLAINT, SUBJECT
from builder.find.coverage import QueryCoverage
from builder.find.covered_concepts import rarity
from builder.find.mentions import Mentions

MOST_EVIDENCE = 250  # percent of the rarest word; more tells no more
EVIDENCE = 125  # percent that it counts
PHRASE = 125  # percent that the covered part of the best phrase counts
TITLE = 60  # points for each of up to two concepts that the title has
WHOLE_TITLE = 60  # more, if it has all that was asked for: `brake` leads to every brake tree

ASKED = 165  # points that any query asks of an entry
ONE_WORD = 40  # less, if the query is one word: it is a look around
ASKED_NAMING = {SUBJECT: 150, COMPLAINT: 50}  # more, if it names one
NO_COMPLAINT = 55  # more, if it names some and the entry has none
EACH_MISSING = 20  # more, for each of up to two subjects that the entry hasn't
SHORT_MISSING = 115  # more, if a short query names a subject that the entry hasn't
SHORT_STRANGE = 65  # more, if it has an unknown word
SHORT_UNTITLED = 20  # more, if it says two things and more, and the title has none of them


def strength(coverage: QueryCoverage, entry: int, entries: int) -> int:
    """Points for and against an entry, of a shop with so many entries."""
    if entry not in coverage.phrases:
        return -ASKED
    in_title = coverage.mentions.in_title.get(entry, 0)
    evidence = min(coverage.gain[entry] // rarity(entries, 1), MOST_EVIDENCE)
    points = (
        coverage.share(entry)
        + coverage.phrases[entry].covered * PHRASE // 100
        + evidence * EVIDENCE // 100
        + min(in_title, 2) * TITLE
        + (WHOLE_TITLE if in_title == coverage.mentions.telling else 0)
    )
    return points - _asked(coverage.mentions, entry)


def _asked(mentions: Mentions, entry: int) -> int:
    """The points that are asked for."""
    asked = ASKED - (ONE_WORD if mentions.is_one_word else 0)
    asked += sum(points for kind, points in ASKED_NAMING.items() if mentions.named[kind])
    if mentions.named[COMPLAINT] and not mentions.has[COMPLAINT].get(entry):
        asked += NO_COMPLAINT
    missing = mentions.named[SUBJECT] - mentions.has[SUBJECT].get(entry, 0)
    asked += min(missing, 2) * EACH_MISSING
    return asked + (_asked_by_short(mentions, entry, missing) if mentions.is_short else 0)


def _asked_by_short(mentions: Mentions, entry: int, missing: int) -> int:
    """What a short query asks for besides."""
    is_untitled = mentions.telling > 1 and not mentions.in_title.get(entry)
    return (
        (SHORT_MISSING if missing else 0)
        + (SHORT_STRANGE if mentions.strange else 0)
        + (SHORT_UNTITLED if is_untitled else 0)
    )
