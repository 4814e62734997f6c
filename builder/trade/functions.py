"""The operations and functions that a computed reading may use.

In: nothing. Out: `OPERATIONS`, the few that a page's script follows too, and `FUNCTIONS`, what an
author may write, with the units that each takes and gives. A function that can be built from
operations is a recipe of them: its numbers reach the page with the reading and exist here once.
A recipe accepts numbers below zero; the range of a reading (`from: 0`) keeps them away.

A slot for an argument is a unit ("V": that unit), a kind in angle brackets ("<resistance>": any
unit of the kind, the same in all such slots of a call), "<any>", "rows" (the numbers of a table)
or the name of a list of wire sizes.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.trade.battery import CHARGE_ROWS, LOAD_TEST_ROWS, USABLE_SHARE
from builder.trade.circuits import divider, parallel
from builder.trade.exact import Exact
from builder.trade.mistake import Mistake
from builder.trade.sensors import (
    TableRows,
    interpolate,
    interpolate_back,
    interpolate_log,
    interpolate_log_back,
)
from builder.trade.wires import COPPER_PER_KELVIN, OHMS_PER_KM_BY_AREA, OHMS_PER_KM_BY_GAUGE

# A compiled expression: ["number", "0.35"], ["reading", "battery"], or an operation and its parts.
# Tables take their rows as numbers behind the value: ["table", value, x1, y1, x2, y2, ...].
Compiled = list["str | Compiled"]


@dataclass(frozen=True, slots=True)
class Function:
    """A function that an author may write in a computed reading."""

    name: str
    slots: tuple[str, ...]
    gives: str  # a unit, or one of the slots in angle brackets
    means: str  # one line for the page that lists the functions
    needed: int  # so many arguments at least
    repeats: bool = False  # whether the last slot may be filled again and again
    recipe: Callable[..., Compiled] | None = None  # None: an operation of the same name


def _divide(above: Fraction, below: Fraction) -> Fraction | Mistake:
    return above / below if below else Mistake("this divides by zero")


def _average(*values: Fraction) -> Fraction:
    return sum(values, Fraction(0)) / len(values)


def _look_up(
    reader: Callable[[TableRows, Exact], Fraction | Mistake],
) -> Callable[..., Fraction | Mistake]:
    def look_up(value: Fraction, *flat: Fraction) -> Fraction | Mistake:
        return reader(row_pairs(flat), value)

    return look_up


def row_pairs(flat: Sequence[Fraction]) -> list[tuple[Fraction, Fraction]]:
    """Pair up the numbers of a table; an odd one at the end is left out."""
    return list(zip(flat[::2], flat[1::2], strict=False))


OPERATIONS: Mapping[str, Callable[..., Fraction | Mistake]] = {
    "+": lambda one, other: one + other,
    "-": lambda one, other: one - other,
    "*": lambda one, other: one * other,
    "/": _divide,
    "negative": lambda one: -one,
    "parallel": parallel,
    "divider": divider,
    "largest": max,
    "smallest": min,
    "average": _average,
    "difference": lambda one, other: abs(one - other),
    "table": _look_up(interpolate),
    "table_back": _look_up(interpolate_back),
    "log_table": _look_up(interpolate_log),
    "log_table_back": _look_up(interpolate_log_back),
}


def constant_form(value: Exact) -> Compiled:
    """Write a constant into a compiled expression, exactly: "60", or "7/20" for 0.35."""
    return ["number", str(Fraction(value))]


def _series(first: Compiled, *others: Compiled) -> Compiled:
    total = first
    for other in others:
        total = ["+", total, other]
    return total


def _flat(rows: TableRows) -> list[Compiled]:
    return [constant_form(value) for row in rows for value in row]


def _battery_charge(volts: Compiled) -> Compiled:
    return ["table", volts, *_flat(CHARGE_ROWS)]


def _load_test_limit(celsius: Compiled) -> Compiled:
    fahrenheit: Compiled = ["+", ["*", celsius, constant_form(Fraction(9, 5))], constant_form(32)]
    return ["table", fahrenheit, *_flat(LOAD_TEST_ROWS)]


def _drain_days(ampere_hours: Compiled, milliamperes: Compiled) -> Compiled:
    return ["/", ["*", ampere_hours, constant_form(USABLE_SHARE * 1000 / 24)], milliamperes]


def copper_form(
    ohms_per_meter: Compiled, meters: Compiled, celsius: Compiled | None = None
) -> Compiled:
    """Compile the resistance of a length of copper from its resistance per meter at 20 °C."""
    at_twenty: Compiled = ["*", ohms_per_meter, meters]
    if celsius is None:
        return at_twenty
    warmer: Compiled = ["*", constant_form(COPPER_PER_KELVIN), ["-", celsius, constant_form(20)]]
    return ["*", at_twenty, ["+", constant_form(1), warmer]]


def _wire(
    sizes: Mapping[str, Fraction],
) -> Callable[..., Compiled]:
    def wire(size: str, meters: Compiled, celsius: Compiled | None = None) -> Compiled:
        return copper_form(constant_form(sizes[size] / 1000), meters, celsius)

    return wire


WIRE_SIZES: Mapping[str, Mapping[str, Fraction]] = {
    "gauge": OHMS_PER_KM_BY_GAUGE,
    "area": OHMS_PER_KM_BY_AREA,
}

_OHMS, _VOLTS, _ANY = "<resistance>", "<voltage>", "<any>"
_ROWS = (_ANY, "rows")
_LIST = (
    Function("parallel", (_OHMS,), _OHMS, "Resistors in parallel", 1, repeats=True),
    Function("series", (_OHMS,), _OHMS, "Resistors in series", 1, repeats=True, recipe=_series),
    Function("divider", (_VOLTS, _OHMS, _OHMS), _VOLTS, "Volts between two resistors", 3),
    Function("largest", (_ANY,), _ANY, "The largest of its values", 2, repeats=True),
    Function("smallest", (_ANY,), _ANY, "The smallest of its values", 2, repeats=True),
    Function("average", (_ANY,), _ANY, "The average of its values", 2, repeats=True),
    Function("difference", (_ANY, _ANY), "<difference>", "The larger minus the smaller", 2),
    Function("table", _ROWS, "", "A value looked up in rows x, y, x, y", 5),
    Function("table_back", _ROWS, "", "The x at which the rows have this y", 5),
    Function("log_table", _ROWS, "", "As table, for what changes by a factor", 5),
    Function("log_table_back", _ROWS, "", "As table_back, for what changes by a factor", 5),
    Function(
        "battery_charge",
        ("V",),
        "%",
        "State of charge of a 12 V battery from open-circuit voltage",
        1,
        recipe=_battery_charge,
    ),
    Function(
        "load_test_limit",
        ("°C",),
        "V",
        "Lowest volts of a 12 V battery in a load test",
        1,
        recipe=_load_test_limit,
    ),
    Function(
        "drain_days",
        ("Ah", "mA"),
        "days",
        "Days until half the battery is drained",
        2,
        recipe=_drain_days,
    ),
    Function(
        "wire_awg",
        ("gauge", "m", "°C"),
        "ohm",
        "Solid copper wire of an American gauge",
        2,
        recipe=_wire(OHMS_PER_KM_BY_GAUGE),
    ),
    Function(
        "wire_mm2",
        ("area", "m", "°C"),
        "ohm",
        "Flexible copper wire of a metric area, highest resistance",
        2,
        recipe=_wire(OHMS_PER_KM_BY_AREA),
    ),
)
FUNCTIONS: Mapping[str, Function] = {one.name: one for one in _LIST}
