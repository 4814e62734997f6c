"""The operations and functions that a computed reading may use.

In: nothing. Out: `OPERATIONS`, the few that a page's script follows too, and `FUNCTIONS`, what an
author may write, with the units that each takes and gives. A function that can be said in
operations is a recipe of them: its figures reach the page with the reading and stand here once.
A recipe refuses no figures below zero; the range of a reading (`from: 0`) keeps them away.

A slot for an argument is a unit ("V": that unit), a kind in angle brackets ("<resistance>": any
unit of the kind, the same in all such slots of a call), "<any>", "rows" (the figures of a table)
or the name of a list of wire sizes.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.trade.battery import CHARGE_ROWS, LOAD_TEST_ROWS, USABLE_SHARE
from builder.trade.circuits import divider, parallel
from builder.trade.exact import Exact
from builder.trade.mistake import Mistake
from builder.trade.sensors import Rows, log_table, log_table_back, table, table_back
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
    reader: Callable[[Rows, Exact], Fraction | Mistake],
) -> Callable[..., Fraction | Mistake]:
    def look_up(value: Fraction, *flat: Fraction) -> Fraction | Mistake:
        return reader(rows_of(flat), value)

    return look_up


def rows_of(flat: Sequence[Fraction]) -> list[tuple[Fraction, Fraction]]:
    """Pair up the figures of a table; a figure too many at the end is left out."""
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
    "table": _look_up(table),
    "table_back": _look_up(table_back),
    "log_table": _look_up(log_table),
    "log_table_back": _look_up(log_table_back),
}


def number(value: Exact) -> Compiled:
    """Write a constant into a compiled expression, exactly: "60", or "7/20" for 0.35."""
    return ["number", str(Fraction(value))]


def _in_a_row(first: Compiled, *others: Compiled) -> Compiled:
    total = first
    for other in others:
        total = ["+", total, other]
    return total


def _flat(rows: Rows) -> list[Compiled]:
    return [number(figure) for row in rows for figure in row]


def _battery_charge(volts: Compiled) -> Compiled:
    return ["table", volts, *_flat(CHARGE_ROWS)]


def _load_test_limit(celsius: Compiled) -> Compiled:
    fahrenheit: Compiled = ["+", ["*", celsius, number(Fraction(9, 5))], number(32)]
    return ["table", fahrenheit, *_flat(LOAD_TEST_ROWS)]


def _drain_days(ampere_hours: Compiled, milliamperes: Compiled) -> Compiled:
    return ["/", ["*", ampere_hours, number(USABLE_SHARE * 1000 / 24)], milliamperes]


def of_copper(
    ohms_per_metre: Compiled, metres: Compiled, celsius: Compiled | None = None
) -> Compiled:
    """Resistance of a length of copper whose resistance for a metre at 20 °C is known."""
    at_twenty: Compiled = ["*", ohms_per_metre, metres]
    if celsius is None:
        return at_twenty
    warmer: Compiled = ["*", number(COPPER_PER_KELVIN), ["-", celsius, number(20)]]
    return ["*", at_twenty, ["+", number(1), warmer]]


def _wire(
    sizes: Mapping[str, Fraction],
) -> Callable[..., Compiled]:
    def wire(size: str, metres: Compiled, celsius: Compiled | None = None) -> Compiled:
        return of_copper(number(sizes[size] / 1000), metres, celsius)

    return wire


WIRE_SIZES: Mapping[str, Mapping[str, Fraction]] = {
    "gauge": OHMS_PER_KM_BY_GAUGE,
    "area": OHMS_PER_KM_BY_AREA,
}

_OHMS, _VOLTS, _ANY = "<resistance>", "<voltage>", "<any>"
_ROWS = (_ANY, "rows")
_LIST = (
    Function("parallel", (_OHMS,), _OHMS, "Resistors side by side", 1, repeats=True),
    Function("series", (_OHMS,), _OHMS, "Resistors in a row", 1, repeats=True, recipe=_in_a_row),
    Function("divider", (_VOLTS, _OHMS, _OHMS), _VOLTS, "Volts between two resistors", 3),
    Function("largest", (_ANY,), _ANY, "The largest of its figures", 2, repeats=True),
    Function("smallest", (_ANY,), _ANY, "The smallest of its figures", 2, repeats=True),
    Function("average", (_ANY,), _ANY, "The average of its figures", 2, repeats=True),
    Function("difference", (_ANY, _ANY), "<difference>", "The larger minus the smaller", 2),
    Function("table", _ROWS, "", "A figure looked up in rows x, y, x, y", 5),
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
        "Least volts of a 12 V battery in a load test",
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
        "Flexible copper wire of a metric area, at most",
        2,
        recipe=_wire(OHMS_PER_KM_BY_AREA),
    ),
)
FUNCTIONS: Mapping[str, Function] = {one.name: one for one in _LIST}
