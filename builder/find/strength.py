"""How sure the search is that an entry is about a query.

In: what an entry covers of a query. Out: points; above 0 the hit is strong and shown, below it the
shop has nothing on this. How many words of the query the entry says speaks for it, so does how
well its best phrase fits, and how much the words tell apart; in a long story, told in everyday
words, less of it need be there. A part that the entry hasn't got, and that nobody names in passing,
speaks against it (`dome light stays on` is no matter of the charging lamp), and so does what is no
complaint: a price, a size. The points were fitted (logistic regression, times 20) to about 600
complaints that trees cover and 1,050 that none does, written by people who had seen neither trees
nor code. The page does the same (`search-coverage.js`).
"""

from builder.find.concept_kinds import LONE
from builder.find.coverage import QueryCoverage
from builder.find.covered_concepts import rarity
from builder.find.mentions import Mentions

MOST_EVIDENCE = 400  # percent of the rarest word; more tells no more
EVIDENCE = 29  # percent that it counts
FIT = 154  # percent that the fit of the best phrase counts
EACH_WORD = 25  # points for each word of the query that the entry says
EACH_EVERYDAY = 9  # for each concept of the query that is everyday words

ASKED = 217  # points that any query asks of an entry
SHORT = 40  # less, if the query says two things; twice that if it says one: it is a look around
LONE_MISSING = 53  # more, for each lone subject that the entry hasn't
EACH_ERRAND = 34  # more, for each thing asked for that is no complaint


def strength(coverage: QueryCoverage, entry: int, entries: int) -> int:
    """Points for and against an entry, of a shop with so many entries."""
    if entry not in coverage.phrases:
        return -ASKED
    mentions = coverage.mentions
    evidence = min(coverage.gain[entry] // rarity(entries, 1), MOST_EVIDENCE)
    points = (
        mentions.said.get(entry, 0) * EACH_WORD
        + coverage.fit(entry) * FIT // 100
        + evidence * EVIDENCE // 100
        + mentions.everyday * EACH_EVERYDAY
    )
    return points - _asked(mentions, entry)


def _asked(mentions: Mentions, entry: int) -> int:
    """The points that are asked for."""
    missing = mentions.named[LONE] - mentions.has[LONE].get(entry, 0)
    asked = ASKED - mentions.brevity * SHORT
    return asked + missing * LONE_MISSING + mentions.errands * EACH_ERRAND
