"""The calculators that are formulas: what to enter, and what follows from it.

In: the text entered beside each field. Out: a `CalculatorAnswer`: lines to show, or a sentence
beside each field that makes no sense. A formula is a compiled expression, so that a page's script
runs the very same one; see `expressions`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from builder.trade.answers import (
    OVER_THE_RANGE,
    AnswerLine,
    CalculatorAnswer,
    number_line,
    scale_to_unit,
)
from builder.trade.battery import NOT_OPEN_CIRCUIT
from builder.trade.exact import round_digits
from builder.trade.expressions import Compiled, compile_expression, parse_expression, run_form
from builder.trade.functions import copper_form
from builder.trade.mistake import Mistake
from builder.trade.quantities import Quantity, format_quantity, typed_quantity
from builder.trade.units import convert
from builder.trade.wires import OHMS_PER_KM_BY_AREA, OHMS_PER_KM_BY_GAUGE

SHOWN_DIGITS = 4  # of an answer; the exact one goes with it


@dataclass(frozen=True, slots=True)
class CalculatorField:
    """One thing to enter: a reading in a unit, or a choice that stands for a number."""

    name: str
    label: str
    unit: str = ""
    low: Decimal | None = None  # the lowest value that makes sense; None: no limit
    choices: Mapping[str, Decimal] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class CalculatorOutput:
    """One thing that follows; left out where one of `without` was entered too."""

    label: str
    form: Compiled
    unit: str
    needs: tuple[str, ...]
    without: tuple[str, ...] = ()
    digits: int = SHOWN_DIGITS


@dataclass(frozen=True, slots=True)
class Calculator:
    """A form with its fields and what follows from them."""

    id: str
    fields: tuple[CalculatorField, ...]
    outputs: tuple[CalculatorOutput, ...]
    cannot: str  # shown where the values can't be calculated with


def _output(
    label: str, text: str, symbol: str, *without: str, digits: int = SHOWN_DIGITS
) -> CalculatorOutput:
    formula = parse_expression(text)
    assert not isinstance(formula, Mistake), formula
    form = compile_expression(formula)
    return CalculatorOutput(label, form, symbol, formula.names, without, digits)


_ZERO = Decimal(0)
_OHMS = CalculatorField("ohms", "Resistance", "ohm", _ZERO)
_AMPS = CalculatorField("amps", "Current", "A", _ZERO)
_VOLTS = CalculatorField("volts", "Voltage drop", "V", _ZERO)
_CELSIUS = CalculatorField("celsius", "Battery temperature", "°C", Decimal(-60))
_SIZES = {f"AWG {size}": ohms for size, ohms in OHMS_PER_KM_BY_GAUGE.items()} | {
    f"{size} mm²": ohms for size, ohms in OHMS_PER_KM_BY_AREA.items()
}
_PER_METER = {size: round_digits(ohms / 1000) for size, ohms in _SIZES.items()}
_WIRE: Compiled = copper_form(["reading", "size"], ["reading", "length"], ["reading", "celsius"])
_WIRE_NEEDS = ("size", "length", "celsius")

CALCULATORS: tuple[Calculator, ...] = (
    Calculator(
        "drop",
        (_VOLTS, _AMPS, _OHMS),
        (
            _output("Voltage drop", "amps * ohms", "V", "volts"),
            _output("Current", "volts / ohms", "A", "amps"),
            _output("Resistance", "volts / amps", "ohm", "ohms"),
            _output("Heat", "amps * ohms * amps", "W", "volts"),
            _output("Heat", "volts / ohms * volts", "W", "amps"),
            _output("Heat", "volts * amps", "W", "ohms"),
        ),
        "enter two values, neither of them zero, and leave the third empty: it is calculated",
    ),
    Calculator(
        "wire",
        (
            CalculatorField("size", "Wire size", choices=_PER_METER),
            CalculatorField("length", "Length, there and back", "m", _ZERO),
            CalculatorField("celsius", "Wire temperature", "°C", Decimal(-60)),
            CalculatorField("amps", "Current through it", "A", _ZERO),
        ),
        (
            CalculatorOutput("Wire resistance", _WIRE, "ohm", _WIRE_NEEDS),
            CalculatorOutput(
                "Voltage drop", ["*", ["reading", "amps"], _WIRE], "V", ("amps", *_WIRE_NEEDS)
            ),
        ),
        "these values can't be calculated with",
    ),
    Calculator(
        "divider",
        (
            CalculatorField("supply", "Divider supply", "V", _ZERO),
            CalculatorField("top", "Resistance to supply", "ohm", _ZERO),
            CalculatorField("bottom", "Resistance to ground", "ohm", _ZERO),
        ),
        (_output("Voltage between them", "divider(supply, top, bottom)", "V"),),
        "a divider needs two resistances that are not both zero",
    ),
    Calculator(
        "battery-charge",
        (CalculatorField("volts", "Open-circuit voltage", "V", _ZERO),),
        (_output("State of charge", "battery_charge(volts)", "%", digits=2),),
        NOT_OPEN_CIRCUIT,
    ),
    Calculator(
        "load-test",
        (_CELSIUS,),
        (_output("Pass at", "load_test_limit(celsius)", "V"),),
        "no temperature at which a battery is load-tested",
    ),
    Calculator(
        "drain",
        (
            CalculatorField("capacity", "Battery capacity", "Ah", _ZERO),
            CalculatorField("drain", "Parasitic draw", "mA", _ZERO),
        ),
        (_output("Until half is used", "drain_days(capacity, drain)", "days", digits=2),),
        "enter a draw above 0 mA: without one the battery isn't drained",
    ),
)


def calculate(calculator: Calculator, entries: Mapping[str, str]) -> CalculatorAnswer:
    """Calculate as far as the fields are filled in; nothing entered gives nothing back."""
    values: dict[str, Decimal] = {}
    mistakes: dict[str, str] = {}
    for one in calculator.fields:
        if not entries.get(one.name, "").strip():
            continue
        value = _value(one, entries[one.name])
        if isinstance(value, Mistake):
            mistakes[one.name] = value.message
        else:
            values[one.name] = value
    if mistakes:
        return CalculatorAnswer(mistakes=mistakes)
    lines = list(_lines(calculator, values))
    complete = len(values) == len(calculator.fields)
    if any(line is None for line in lines) or (complete and not lines):
        return CalculatorAnswer(mistakes={"": calculator.cannot})
    return CalculatorAnswer(tuple(line for line in lines if line))


def _value(of: CalculatorField, text: str) -> Decimal | Mistake:
    if of.choices:
        return of.choices.get(text, Mistake(f"{text} is not in the list"))
    quantity = typed_quantity(text, of.unit)
    if isinstance(quantity, Mistake):
        return quantity
    if not isinstance(quantity, Quantity):
        return Mistake(OVER_THE_RANGE)
    value = round_digits(convert(quantity.value, quantity.unit, of.unit))
    if of.low is not None and value < of.low:
        lowest = format_quantity(Quantity(of.low, of.unit))
        return Mistake(f"{of.label.lower()} below {lowest} makes no sense here")
    return value


def _lines(calculator: Calculator, values: Mapping[str, Decimal]) -> Iterator[AnswerLine | None]:
    """Yield what follows; None for what can't be calculated."""
    for output in calculator.outputs:
        if not set(output.needs) <= values.keys() or values.keys() & set(output.without):
            continue
        value = run_form(output.form, values)
        if isinstance(value, Mistake):
            yield None
        else:
            yield number_line(output.label, *scale_to_unit(value, output.unit), output.digits)
