"""What the page searches by: every word list, pattern and figure of the search.

In: the words that say little. Out: a map that JSON can carry. They stand in one place, in the
modules that they are taken from; the page's scripts hold logic alone. The patterns are such that
Python and a browser read them alike.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from builder.find import strength
from builder.find.asked_codes import BARE_CODE, MARKS, WRITTEN_CODE, YEARS
from builder.find.asked_vehicles import WRITTEN_NUMBER
from builder.find.code_matches import CODE_POINTS, PLACE_POINTS
from builder.find.common_words import (
    MEASURES,
    NEGATIONS,
    NUMBER_WORDS,
    ORDINARY_WORDS,
    STOP_WORDS,
)
from builder.find.concept_kinds import KIND_WEIGHTS
from builder.find.covered_concepts import CLEAR_CREDIT, OPPOSITE_CREDIT
from builder.find.danger_words import WORD_GROUPS
from builder.find.dangers import DANGERS
from builder.find.guesses import ASKED, GUESS, LEAST_TOLD, LONGEST_GUESS, PARTS, POINT
from builder.find.mentions import PART_CREDIT
from builder.find.phrasebook import GAP
from builder.find.plain_forms import PLAIN_FORMS, SMALL_WORDS
from builder.find.ranking import (
    CERTAIN,
    MOST_HITS,
    MOST_NEAREST,
    TAIL_SCORE,
    TAIL_STRENGTH,
    TITLE_RAISE,
)
from builder.find.safety import ANY_WORDS, MOST_ANY, MOST_LINES, NEAR, TAKEN_OUT
from builder.find.search_query import FRACTION, LONGEST_QUERY, NOMINAL, READINGS, VOLTAGES, VOLTS
from builder.find.shorthand import SHORTHAND
from builder.find.symptom_index import OWN, UNSAID
from builder.find.word_forms import ENDINGS, UNITS
from builder.trade.codes import CODE_LOOK_ALIKES, SYSTEM_LETTERS
from builder.trade.vin import FIRST_YEAR, VIN_VALUES, VIN_WEIGHTS, YEAR_CODES, YEAR_CYCLE


def page_rules(everyday: Iterable[str]) -> Mapping[str, Any]:
    """Return all that the scripts would else repeat."""
    return {
        "stopWords": _word_list(STOP_WORDS),
        "negations": _word_list(NEGATIONS),
        "everyday": _word_list(everyday),
        "ordinary": _word_list(ORDINARY_WORDS),
        "measures": _word_list(MEASURES),
        "numberWords": _word_list(NUMBER_WORDS),
        "units": UNITS,
        "endings": ENDINGS,
        "gap": GAP,
        "ownWeight": OWN,
        "unsaid": UNSAID,
        "codes": {
            "written": WRITTEN_CODE,
            "marks": MARKS,
            "bare": BARE_CODE,
            "lookAlikes": {chr(was): chr(int(now)) for was, now in CODE_LOOK_ALIKES.items()},
            "letters": SYSTEM_LETTERS,
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
        "readings": READINGS,
        "fraction": FRACTION,
        "guesses": {
            "parts": PARTS,
            "point": POINT,
            "guess": GUESS,
            "asked": ASKED,
            "longest": LONGEST_GUESS,
            "leastTold": LEAST_TOLD,
        },
        "longestQuery": LONGEST_QUERY,
        "shorthand": SHORTHAND,
        "oppositeCredit": OPPOSITE_CREDIT,
        "clearCredit": CLEAR_CREDIT,
        "partCredit": PART_CREDIT,
        "kindWeights": KIND_WEIGHTS,
        "strength": _strength_points(),
        "certain": CERTAIN,
        "titleRaise": TITLE_RAISE,
        "tailScore": TAIL_SCORE,
        "tailStrength": TAIL_STRENGTH,
        "mostHits": MOST_HITS,
        "mostNearest": MOST_NEAREST,
        "safety": _safety_rules(),
    }


def _strength_points() -> Mapping[str, Any]:
    return {
        "mostEvidence": strength.MOST_EVIDENCE,
        "evidence": strength.EVIDENCE,
        "fit": strength.FIT,
        "covered": strength.COVERED,
        "eachWord": strength.EACH_WORD,
        "eachEveryday": strength.EACH_EVERYDAY,
        "eachInTitle": strength.EACH_IN_TITLE,
        "mostInTitle": strength.MOST_IN_TITLE,
        "look": strength.LOOK,
        "asked": strength.ASKED,
        "short": strength.SHORT,
        "noParts": strength.NO_PARTS,
        "loneMissing": strength.LONE_MISSING,
        "eachErrand": strength.EACH_ERRAND,
    }


def _safety_rules() -> Mapping[str, Any]:
    """The signs as they are written: the page takes them apart as `safety.py` does."""
    return {
        "near": NEAR,
        "takenOut": TAKEN_OUT,
        "anyWords": ANY_WORDS,
        "mostAny": MOST_ANY,
        "mostLines": MOST_LINES,
        "smallWords": _one_line(SMALL_WORDS),
        "plainForms": {plain: _one_line(forms) for plain, forms in PLAIN_FORMS.items()},
        "groups": {name: _one_line(words) for name, words in WORD_GROUPS.items()},
        "dangers": [[it.text, _one_line(it.signs), _one_line(it.harmless)] for it in DANGERS],
    }


def _one_line(text: str) -> str:
    return " ".join(text.split())


def _word_list(words: Iterable[str]) -> str:
    return " ".join(sorted(words))
