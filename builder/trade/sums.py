"""The sums of the bench page that are formulae: what is typed in, and what follows from it.

In: what was typed beside each field, as text. Out: an `Answer`: lines to be shown, or a sentence
beside each field that makes no sense. A formula is a compiled expression, so that a page's script
follows the very same one; see `expressions`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from builder.trade.battery import NOT_OPEN_CIRCUIT
from builder.trade.exact import rounded
from builder.trade.expressions import Compiled, compiled, parse, run
from builder.trade.functions import of_copper
from builder.trade.mistake import Mistake
from builder.trade.quantities import Quantity, typed_quantity, written
from builder.trade.units import convert, unit
from builder.trade.wires import OHMS_PER_KM_BY_AREA, OHMS_PER_KM_BY_GAUGE

SHOWN_DIGITS = 4  # of an answer; the exact one goes with it
# Units of one kind from small to large, of which an answer takes the first that keeps it below
# `SWITCH`: 20 mΩ and not 0.02 Ω.
SCALES: tuple[tuple[str, ...], ...] = (
    ("mV", "V", "kV"),
    ("mA", "A"),
    ("mohm", "ohm", "kohm", "Mohm"),
)
SWITCH = 1000
OVER_THE_RANGE = "over the range is no figure to work with"


@dataclass(frozen=True, slots=True)
class Field:
    """One thing to type in: a reading in a unit, or a choice that stands for a number."""

    name: str
    label: str
    unit: str = ""
    low: Decimal | None = None  # the least that makes sense; None: anything
    choices: Mapping[str, Decimal] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Output:
    """One thing that follows; left out where one of `without` was typed in too."""

    label: str
    form: Compiled
    unit: str
    needs: tuple[str, ...]
    without: tuple[str, ...] = ()
    digits: int = SHOWN_DIGITS


@dataclass(frozen=True, slots=True)
class Sum:
    """A form with its fields and what follows from them."""

    id: str
    fields: tuple[Field, ...]
    outputs: tuple[Output, ...]
    cannot: str  # said where the figures cannot be worked with


@dataclass(frozen=True, slots=True)
class Line:
    """One line of an answer."""

    label: str
    text: str
    exact: str = ""  # of a number that `text` rounds: twelve digits


@dataclass(frozen=True, slots=True)
class Answer:
    """What is shown under a form; mistakes by the name of the field, "" for the form as a whole."""

    lines: tuple[Line, ...] = ()
    mistakes: Mapping[str, str] = field(default_factory=dict)


def _output(
    label: str, text: str, symbol: str, *without: str, digits: int = SHOWN_DIGITS
) -> Output:
    parsed = parse(text)
    assert not isinstance(parsed, Mistake), parsed
    return Output(label, compiled(parsed), symbol, parsed.names, without, digits)


_ZERO = Decimal(0)
_OHMS = Field("ohms", "Resistance", "ohm", _ZERO)
_AMPS = Field("amps", "Current", "A", _ZERO)
_VOLTS = Field("volts", "Voltage lost", "V", _ZERO)
_CELSIUS = Field("celsius", "Temperature", "°C", Decimal(-60))
_SIZES = {f"AWG {size}": ohms for size, ohms in OHMS_PER_KM_BY_GAUGE.items()} | {
    f"{size} mm²": ohms for size, ohms in OHMS_PER_KM_BY_AREA.items()
}
_PER_METRE = {size: rounded(ohms / 1000) for size, ohms in _SIZES.items()}
_WIRE: Compiled = of_copper(["reading", "size"], ["reading", "length"], ["reading", "celsius"])
_WIRE_NEEDS = ("size", "length", "celsius")

SUMS: tuple[Sum, ...] = (
    Sum(
        "drop",
        (_VOLTS, _AMPS, _OHMS),
        (
            _output("Voltage lost", "amps * ohms", "V", "volts"),
            _output("Current", "volts / ohms", "A", "amps"),
            _output("Resistance", "volts / amps", "ohm", "ohms"),
            _output("Turned into heat", "amps * ohms * amps", "W", "volts"),
            _output("Turned into heat", "volts / ohms * volts", "W", "amps"),
            _output("Turned into heat", "volts * amps", "W", "ohms"),
        ),
        "fill in two, neither of them zero, and leave the third empty: it is worked out",
    ),
    Sum(
        "wire",
        (
            Field("size", "Size of the wire", choices=_PER_METRE),
            Field("length", "Length, there and back", "m", _ZERO),
            Field("celsius", "Temperature of the wire", "°C", Decimal(-60)),
            Field("amps", "Current through it", "A", _ZERO),
        ),
        (
            Output("Resistance of the wire", _WIRE, "ohm", _WIRE_NEEDS),
            Output(
                "Voltage lost along it",
                ["*", ["reading", "amps"], _WIRE],
                "V",
                ("amps", *_WIRE_NEEDS),
            ),
        ),
        "these figures cannot be worked with",
    ),
    Sum(
        "divider",
        (
            Field("supply", "Supply of the divider", "V", _ZERO),
            Field("top", "Resistance to the supply", "ohm", _ZERO),
            Field("bottom", "Resistance to ground", "ohm", _ZERO),
        ),
        (_output("Voltage between them", "divider(supply, top, bottom)", "V"),),
        "a divider needs two resistances that are not both zero",
    ),
    Sum(
        "rest",
        (Field("volts", "Open-circuit voltage", "V", _ZERO),),
        (_output("State of charge", "battery_charge(volts)", "%", digits=2),),
        NOT_OPEN_CIRCUIT,
    ),
    Sum(
        "load-test",
        (_CELSIUS,),
        (_output("Least voltage at the end", "load_test_limit(celsius)", "V"),),
        "no temperature at which a battery is load-tested",
    ),
    Sum(
        "drain",
        (
            Field("capacity", "Capacity of the battery", "Ah", _ZERO),
            Field("drain", "Current while parked", "mA", _ZERO),
        ),
        (_output("Until half of it is used", "drain_days(capacity, drain)", "days", digits=2),),
        "with no drain the battery lasts",
    ),
)


def worked_out(of: Sum, typed: Mapping[str, str]) -> Answer:
    """Work a sum out as far as its fields are filled in; nothing typed gives nothing back."""
    values: dict[str, Decimal] = {}
    mistakes: dict[str, str] = {}
    for one in of.fields:
        if not typed.get(one.name, "").strip():
            continue
        value = _value(one, typed[one.name])
        if isinstance(value, Mistake):
            mistakes[one.name] = value.message
        else:
            values[one.name] = value
    if mistakes:
        return Answer(mistakes=mistakes)
    lines = list(_lines(of, values))
    if any(line is None for line in lines) or (not lines and len(values) == len(of.fields)):
        return Answer(mistakes={"": of.cannot})
    return Answer(tuple(line for line in lines if line))


def _value(of: Field, text: str) -> Decimal | Mistake:
    if of.choices:
        return of.choices.get(text, Mistake(f"{text} is not in the list"))
    found = typed_quantity(text, of.unit)
    if isinstance(found, Mistake):
        return found
    if not isinstance(found, Quantity):
        return Mistake(OVER_THE_RANGE)
    value = rounded(convert(found.value, found.unit, of.unit))
    if of.low is not None and value < of.low:
        least = written(Quantity(of.low, of.unit))
        return Mistake(f"{of.label.lower()} below {least} makes no sense here")
    return value


def _lines(of: Sum, values: Mapping[str, Decimal]) -> Iterator[Line | None]:
    """Yield what follows; None for what cannot be worked out."""
    for output in of.outputs:
        if not set(output.needs) <= values.keys() or values.keys() & set(output.without):
            continue
        found = run(output.form, values)
        if isinstance(found, Mistake):
            yield None
        else:
            yield number_line(output.label, *scaled(found, output.unit), output.digits)


def number_line(label: str, value: Fraction, symbol: str, digits: int) -> Line:
    """Write a number for the page, and its exact digits beside it."""
    shown = written(Quantity(rounded(value, digits), symbol))
    known = unit(symbol)
    return Line(label, shown, f"{rounded(value):f} {known.sign if known else symbol}")


def scaled(value: Fraction, symbol: str) -> tuple[Fraction, str]:
    """Bring a value to the unit that people would say it in; zero stays as it is."""
    scale = next((scale for scale in SCALES if symbol in scale), (symbol,))
    if not value or len(scale) == 1:
        return value, symbol
    ways = [(convert(value, symbol, other), other) for other in scale]
    return next((way for way in ways if abs(way[0]) < SWITCH), ways[-1])
