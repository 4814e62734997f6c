"""What the page searches by: every word list, pattern and figure of the search.

In: the words that say little. Out: a map that JSON can carry. They stand in one place, in the
modules that they are taken from; the page's scripts hold logic alone. The patterns are such that
Python and a browser read them alike.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from builder.find.asked_codes import BARE_CODE, WRITTEN_CODE, YEARS
from builder.find.asked_vehicles import WRITTEN_NUMBER
from builder.find.code_matches import CODE_POINTS, PLACE_POINTS
from builder.find.common_words import NEGATIONS, STOP_WORDS
from builder.find.coverage import CLEAR_CREDIT, EVERYDAY_WEIGHT, OPPOSITE_CREDIT
from builder.find.phrasebook import GAP
from builder.find.ranking import FULL_ANSWER, MOST_HITS, WEAK_SHARE
from builder.find.search_query import LONGEST_QUERY, NOMINAL, VOLTAGES, VOLTS
from builder.find.suggestions import MOST_SUGGESTIONS
from builder.find.symptom_index import OWN
from builder.find.word_forms import ENDINGS
from builder.trade.codes import CODE_LOOK_ALIKES, SYSTEM_LETTERS
from builder.trade.vin import FIRST_YEAR, VIN_VALUES, VIN_WEIGHTS, YEAR_CODES, YEAR_CYCLE


def page_rules(everyday: Iterable[str]) -> Mapping[str, Any]:
    """Return all that the scripts would else repeat."""
    return {
        "stopWords": _word_list(STOP_WORDS),
        "negations": _word_list(NEGATIONS),
        "everyday": _word_list(everyday),
        "endings": ENDINGS,
        "gap": GAP,
        "ownWeight": OWN,
        "codes": {
            "written": WRITTEN_CODE,
            "bare": BARE_CODE,
            "lookAlikes": {chr(was): chr(int(now)) for was, now in CODE_LOOK_ALIKES.items()},
            "letters": "".join(sorted(SYSTEM_LETTERS)),
            "years": YEARS,
            "points": CODE_POINTS,
            "placePoints": PLACE_POINTS,
        },
        "vehicleNumbers": {
            "written": WRITTEN_NUMBER,
            "values": dict(VIN_VALUES),
            "weights": VIN_WEIGHTS,
            "yearCodes": YEAR_CODES,
            "firstYear": FIRST_YEAR,
            "cycle": YEAR_CYCLE,
        },
        "volts": {"written": VOLTS, "meanings": VOLTAGES, "nominal": NOMINAL},
        "longestQuery": LONGEST_QUERY,
        "oppositeCredit": OPPOSITE_CREDIT,
        "clearCredit": CLEAR_CREDIT,
        "everydayWeight": EVERYDAY_WEIGHT,
        "mostHits": MOST_HITS,
        "weakShare": WEAK_SHARE,
        "fullAnswer": FULL_ANSWER,
        "mostSuggestions": MOST_SUGGESTIONS,
    }


def _word_list(words: Iterable[str]) -> str:
    return " ".join(sorted(words))
