"""The tables of the trade as plain lists and maps, for a page's script.

In: nothing. Out: maps that JSON can carry, numbers as exact text (`7/20`). They exist once, in the
modules that they come from; a script that calculates the same holds logic alone.
"""

from collections.abc import Mapping
from itertools import groupby
from typing import Any

from builder.trade.answers import OVER_THE_RANGE, SCALE_SWITCH, UNIT_SCALES
from builder.trade.bus import BELOW_ZERO, EITHER, NO_STATE, bus_states
from builder.trade.calculators import CALCULATORS, CalculatorField, CalculatorOutput
from builder.trade.codes import CODE_LOOK_ALIKES, CODE_SYSTEMS, SYSTEM_LETTERS, Code, code_owner
from builder.trade.failure_types import FAILURE_CATEGORIES, FAILURE_TYPE_WORDS, SETUP_STEP_MISSING
from builder.trade.lookups import (
    CODE_OWNERS,
    LEAST_SHOWN,
    LIGHT_VEHICLE,
    LOOKUP_FIELDS,
    MOST_SHOWN,
    UNIT_DIGITS,
)
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import CONDITION_RANGE, NEXT_STEPS, REFUSALS, SECURITY_RANGE
from builder.trade.units import ALIASES, UNITS
from builder.trade.vin import (
    FIRST_YEAR,
    VIN_LOOK_ALIKES,
    VIN_VALUES,
    VIN_WEIGHTS,
    YEAR_CODES,
    YEAR_CYCLE,
)

TradeData = Mapping[str, Any]


def units_data() -> TradeData:
    """Return every unit as [kind, factor, offset, label], and the other spellings."""
    return {
        "list": {
            one.symbol: [one.kind, str(one.factor), str(one.offset), one.label]
            for one in UNITS.values()
        },
        "aliases": dict(ALIASES),
    }


def calculator_data() -> TradeData:
    """Return the formulas and tables of the calculators."""
    return {
        "formulas": {
            of.id: {
                "fields": [_field(one) for one in of.fields],
                "outputs": [_output(one) for one in of.outputs],
                "cannot": of.cannot,
            }
            for of in CALCULATORS
        },
        "lookupFields": dict(LOOKUP_FIELDS),
        "unitDigits": UNIT_DIGITS,
        "handy": [str(LEAST_SHOWN), str(MOST_SHOWN)],
        "scales": [list(scale) for scale in UNIT_SCALES],
        "switch": str(SCALE_SWITCH),
        "overTheRange": OVER_THE_RANGE,
        "bus": _bus(),
        "codes": _codes(),
        "refusals": _refusals(),
        "vin": {
            "values": dict(VIN_VALUES),
            "weights": list(VIN_WEIGHTS),
            "lookAlikes": VIN_LOOK_ALIKES,
            "yearCodes": YEAR_CODES,
            "firstYear": FIRST_YEAR,
            "cycle": YEAR_CYCLE,
            "light": LIGHT_VEHICLE,
        },
    }


def _field(of: CalculatorField) -> TradeData:
    choices = {name: str(value) for name, value in of.choices.items()}
    low = None if of.low is None else str(of.low)
    return {"name": of.name, "label": of.label, "unit": of.unit, "low": low, "choices": choices}


def _output(of: CalculatorOutput) -> TradeData:
    return {
        "label": of.label,
        "form": of.form,
        "unit": of.unit,
        "needs": list(of.needs),
        "without": list(of.without),
        "digits": of.digits,
    }


def _bus() -> TradeData:
    states = bus_states()
    assert not isinstance(states, Mistake)
    rows = [[one.name, str(one.low), None if one.high is None else str(one.high)] for one in states]
    return {"states": rows, "below": BELOW_ZERO, "none": NO_STATE, "either": EITHER}


def _codes() -> TradeData:
    return {
        "letters": SYSTEM_LETTERS,
        "systems": dict(CODE_SYSTEMS),
        "lookAlikes": {chr(was): chr(int(now)) for was, now in CODE_LOOK_ALIKES.items()},
        "makers": _maker_ranges(),
        "owners": dict(CODE_OWNERS),
        "categories": list(FAILURE_CATEGORIES),
        "failureTypes": {str(number): words for number, words in FAILURE_TYPE_WORDS.items()},
        "setupSteps": {str(number): verb for number, verb in SETUP_STEP_MISSING.items()},
    }


def _maker_ranges() -> list[list[int]]:
    """Return the first and last number of every range of codes that the maker defines."""
    runs: list[list[int]] = []
    blocks = range(0, 0x10000, 0x100)  # no block of the standard has two owners
    for maker, group in groupby(blocks, lambda number: code_owner(Code(number)) == "maker"):
        firsts = list(group)
        if maker:
            runs.append([firsts[0], firsts[-1] + 0xFF])
    return runs


def _refusals() -> TradeData:
    return {
        "list": {
            str(one.number): [one.name, one.kind, one.means, one.older] for one in REFUSALS.values()
        },
        "ranges": [
            [numbers.start, numbers.stop - 1, kind, means]
            for numbers, kind, means in (SECURITY_RANGE, CONDITION_RANGE)
        ],
        "next": dict(NEXT_STEPS),
    }
