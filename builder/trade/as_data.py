"""The tables of the trade as plain lists and maps, for a page's script.

In: nothing. Out: maps that JSON can carry, numbers as exact text (`7/20`). They stand in one place,
in the modules that they are taken from; a script that does the same sums holds logic alone.
"""

from collections.abc import Mapping
from itertools import groupby
from typing import Any

from builder.trade.bus import BELOW_ZERO, EITHER, NO_STATE, bus_states
from builder.trade.codes import LETTERS, SYSTEMS, Code, owner
from builder.trade.codes import LOOK_ALIKES as CODE_LOOK_ALIKES
from builder.trade.failure_types import CATEGORIES, SET_UP_MISSING, WORDS
from builder.trade.look_ups import FIELD_OF, LEAST, LIGHT, MOST, OWNERS, UNIT_DIGITS
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import CONDITION_RANGE, NEXT_STEPS, REFUSALS, SECURITY_RANGE
from builder.trade.sums import OVER_THE_RANGE, SCALES, SUMS, SWITCH, Field, Output
from builder.trade.units import ALIASES, UNITS
from builder.trade.vehicle_numbers import (
    CYCLE,
    FIRST_YEAR,
    LOOK_ALIKES,
    VALUES,
    WEIGHTS,
    YEAR_CODES,
)

Data = Mapping[str, Any]


def units_data() -> Data:
    """Return every unit as [kind, factor, offset, sign], and the other spellings."""
    return {
        "list": {
            one.symbol: [one.kind, str(one.factor), str(one.offset), one.sign]
            for one in UNITS.values()
        },
        "aliases": dict(ALIASES),
    }


def bench_data() -> Data:
    """Return what the look-ups and sums of the bench page know."""
    return {
        "sums": {
            of.id: {
                "fields": [_field(one) for one in of.fields],
                "outputs": [_output(one) for one in of.outputs],
                "cannot": of.cannot,
            }
            for of in SUMS
        },
        "fieldOf": dict(FIELD_OF),
        "unitDigits": UNIT_DIGITS,
        "plain": [str(LEAST), str(MOST)],
        "scales": [list(scale) for scale in SCALES],
        "switch": str(SWITCH),
        "overTheRange": OVER_THE_RANGE,
        "bus": _bus(),
        "codes": _codes(),
        "refusals": _refusals(),
        "vehicleNumbers": {
            "values": dict(VALUES),
            "weights": list(WEIGHTS),
            "lookAlikes": LOOK_ALIKES,
            "yearCodes": YEAR_CODES,
            "firstYear": FIRST_YEAR,
            "cycle": CYCLE,
            "light": LIGHT,
        },
    }


def _field(of: Field) -> Data:
    choices = {name: str(value) for name, value in of.choices.items()}
    low = None if of.low is None else str(of.low)
    return {"name": of.name, "label": of.label, "unit": of.unit, "low": low, "choices": choices}


def _output(of: Output) -> Data:
    return {
        "label": of.label,
        "form": of.form,
        "unit": of.unit,
        "needs": list(of.needs),
        "without": list(of.without),
        "digits": of.digits,
    }


def _bus() -> Data:
    states = bus_states()
    assert not isinstance(states, Mistake)
    rows = [[one.name, str(one.low), None if one.high is None else str(one.high)] for one in states]
    return {"states": rows, "below": BELOW_ZERO, "none": NO_STATE, "either": EITHER}


def _codes() -> Data:
    return {
        "letters": LETTERS,
        "systems": dict(SYSTEMS),
        "lookAlikes": {chr(was): chr(int(now)) for was, now in CODE_LOOK_ALIKES.items()},
        "makers": _makers(),
        "owners": dict(OWNERS),
        "categories": list(CATEGORIES),
        "failureTypes": {str(number): words for number, words in WORDS.items()},
        "setUp": {str(number): verb for number, verb in SET_UP_MISSING.items()},
    }


def _makers() -> list[list[int]]:
    """Return the first and the last of every run of codes to which the maker gives the meaning."""
    runs: list[list[int]] = []
    for maker, numbers in groupby(range(0x10000), lambda number: owner(Code(number)) == "maker"):
        listed = list(numbers)
        if maker:
            runs.append([listed[0], listed[-1]])
    return runs


def _refusals() -> Data:
    return {
        "list": {
            str(one.number): [one.name, one.kind, one.means, one.older] for one in REFUSALS.values()
        },
        "ranges": [
            [found.start, found.stop - 1, kind, means]
            for found, kind, means in (SECURITY_RANGE, CONDITION_RANGE)
        ],
        "next": dict(NEXT_STEPS),
    }
