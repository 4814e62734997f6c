"""How sure the search is that an entry is about a query.

In: what an entry covers of a query. Out: points; above 0 the hit is strong and shown, below it the
shop has nothing on this. How many words of the query the entry says speaks for it, so does how well
its best phrase fits, and how much the words tell apart; in a long story, told in everyday words,
less of it need be there. Of the parts that a story names, its tree has one in its title. A part
that the entry hasn't got, and that nobody names in passing, speaks against it (`dome light stays
on` is no matter of the charging lamp), and so does what is no complaint: a price, a size. The
points were fitted (logistic regression, times 20) to about 1,700 complaints that trees cover and
1,400 that none does, written by people who had seen neither trees nor code. The page does the same
(`search-coverage.js`).
"""

from builder.find.concept_kinds import COMPLAINT, LONE, SUBJECT
from builder.find.coverage import QueryCoverage
from builder.find.covered_concepts import rarity
from builder.find.mentions import Mentions

MOST_EVIDENCE = 400  # percent of the rarest word; more tells no more
EVIDENCE = 30  # percent that it counts
FIT = 135  # percent that the fit of the best phrase counts
EACH_WORD = 15  # points for each word of the query that the entry says
EACH_EVERYDAY = 12  # for each concept of the query that is everyday words

ASKED = 166  # points that any query asks of an entry
SHORT = 28  # less, if the query says two things; twice that if it says one: it is a look around
OFF_TITLE = 36  # more, if it tells of parts, and the title has none of them
LONE_MISSING = 35  # more, for each lone subject that the entry hasn't
EACH_ERRAND = 33  # more, for each thing asked for that is no complaint


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
    names_parts = mentions.named[SUBJECT] or mentions.named[LONE]
    in_title = mentions.subjects_in_title.get(entry, 0)
    is_told = mentions.named[COMPLAINT] or not mentions.brevity
    is_off_title = names_parts and not in_title and is_told
    missing = mentions.named[LONE] - mentions.has[LONE].get(entry, 0)
    asked = ASKED - mentions.brevity * SHORT + (OFF_TITLE if is_off_title else 0)
    return asked + missing * LONE_MISSING + mentions.errands * EACH_ERRAND
