"""How sure the search is that an entry is about a query.

In: what an entry covers of a query. Out: points; above 0 the hit is strong and shown, below it the
shop has nothing on this. How many words of the query the entry says speaks for it, so does how well
its best phrase fits, how much the words tell apart, and what its title has; in a long story, told
in everyday words, less of it need be there, and less where no part is named. A part that the entry
hasn't got, and that nobody names in passing, speaks against it (`dome light stays on` is no matter
of the charging lamp), and so does what is no complaint: a price, a size. The points were fitted
(logistic regression, times 20) to about 1,300 complaints that trees cover and 900 that none does,
written by people who had seen neither trees nor code. The page does the same
(`search-coverage.js`).
"""

from builder.find.concept_kinds import LONE, SUBJECT
from builder.find.coverage import QueryCoverage
from builder.find.covered_concepts import rarity
from builder.find.mentions import Mentions

MOST_EVIDENCE = 400  # percent of the rarest word; more tells no more
EVIDENCE = 48  # percent that it counts
FIT = 68  # percent that the fit of the best phrase counts
COVERED = 55  # percent that counts how much of that phrase is said
EACH_WORD = 17  # points for each word of the query that the entry says
EACH_EVERYDAY = 12  # for each concept of the query that is everyday words
EACH_IN_TITLE = 27  # for each concept that the title has
MOST_IN_TITLE = 3
LOOK = 2  # the brevity of a query that says one thing: a look around

ASKED = 242  # points that any query asks of an entry
SHORT = 47  # less, if the query says two things; twice that if it says one
NO_PARTS = 44  # less, if it names none, or nothing else: a story, or a look
LONE_MISSING = 52  # more, for each lone subject that the entry hasn't
EACH_ERRAND = 29  # more, for each thing asked for that is no complaint


def strength(coverage: QueryCoverage, entry: int, entries: int) -> int:
    """Points for and against an entry, of a shop with so many entries."""
    if entry not in coverage.phrases:
        return -ASKED
    mentions = coverage.mentions
    evidence = min(coverage.gain[entry] // rarity(entries, 1), MOST_EVIDENCE)
    points = (
        mentions.said.get(entry, 0) * EACH_WORD
        + coverage.fit(entry) * FIT // 100
        + coverage.phrases[entry].covered * COVERED // 100
        + evidence * EVIDENCE // 100
        + mentions.everyday * EACH_EVERYDAY
        + min(mentions.in_title.get(entry, 0), MOST_IN_TITLE) * EACH_IN_TITLE
    )
    return points - _asked(mentions, entry)


def _asked(mentions: Mentions, entry: int) -> int:
    """The points that are asked for."""
    is_look = mentions.brevity == LOOK
    tells_of_parts = not is_look and (mentions.named[SUBJECT] or mentions.named[LONE])
    missing = mentions.named[LONE] - mentions.has[LONE].get(entry, 0)
    asked = ASKED - mentions.brevity * SHORT - (0 if tells_of_parts else NO_PARTS)
    return asked + missing * LONE_MISSING + mentions.errands * EACH_ERRAND
