"""The calculators that look something up: bus resistance, units, a DTC, a VIN, a refusal.

In: the text entered beside each field. Out: a `CalculatorAnswer`. `calculator_answer` is the one
door to these and to the calculators that are formulas.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction

from builder.trade.answers import OVER_THE_RANGE, AnswerLine, CalculatorAnswer, number_line
from builder.trade.bus import bus_state, bus_states
from builder.trade.calculators import CALCULATORS, calculate
from builder.trade.codes import CODE_SYSTEMS, Code, code_bytes, code_owner, parse_code
from builder.trade.failure_types import SETUP_STEP_MISSING, failure_type_byte
from builder.trade.mistake import Mistake
from builder.trade.quantities import OverRange, typed_quantity
from builder.trade.refusal_codes import NEXT_STEPS
from builder.trade.refusals import parse_refusal
from builder.trade.units import UNITS, convert
from builder.trade.vin import check_digit, model_years, parse_vin

UNIT_DIGITS = 6  # of a value in another unit
# Units in which a value falls outside of these are left out.
LEAST_SHOWN, MOST_SHOWN = Fraction(1, 1000), Fraction(1_000_000)
CODE_OWNERS: Mapping[str, str] = {
    "standard": "the standard",
    "maker": "the vehicle maker: look it up in the service information",
}
LIGHT_VEHICLE = "car, or truck up to 10,000 lb (4536 kg)"
OTHER_VEHICLE = "heavier, a trailer, or unknown"


def calculator_answer(id_: str, entries: Mapping[str, str]) -> CalculatorAnswer:
    """Answer what was entered into the form of that name."""
    if id_ in LOOKUPS:
        entries = {name: text.strip() for name, text in entries.items()}
        return LOOKUPS[id_](entries) if entries.get(LOOKUP_FIELDS[id_]) else CalculatorAnswer()
    return calculate(next(one for one in CALCULATORS if one.id == id_), entries)


def _bus(entries: Mapping[str, str]) -> CalculatorAnswer:
    quantity = typed_quantity(entries["ohms"], "ohm")
    if isinstance(quantity, OverRange):
        states = bus_states()
        assert not isinstance(states, Mistake)
        return CalculatorAnswer((AnswerLine("Shows", states[-1].name),))
    state = (
        quantity
        if isinstance(quantity, Mistake)
        else bus_state(convert(quantity.value, quantity.unit, "ohm"))
    )
    if isinstance(state, Mistake):
        return CalculatorAnswer(mistakes={"ohms": state.message})
    return CalculatorAnswer((AnswerLine("Shows", state),))


def _units(entries: Mapping[str, str]) -> CalculatorAnswer:
    quantity = typed_quantity(entries["reading"])
    if isinstance(quantity, Mistake):
        return CalculatorAnswer(mistakes={"reading": quantity.message})
    if isinstance(quantity, OverRange):
        return CalculatorAnswer(mistakes={"reading": OVER_THE_RANGE})
    own = UNITS[quantity.unit]
    others = [one for one in UNITS.values() if one.kind == own.kind and one != own]
    if not others:
        return CalculatorAnswer((AnswerLine("", f"{own.label} has no other unit"),))
    values = [(convert(quantity.value, own.symbol, one.symbol), one.symbol) for one in others]
    handy = [pair for pair in values if LEAST_SHOWN <= abs(pair[0]) < MOST_SHOWN]
    return CalculatorAnswer(tuple(number_line("", *pair, UNIT_DIGITS) for pair in handy or values))


def _code(entries: Mapping[str, str]) -> CalculatorAnswer:
    code = parse_code(entries["code"])
    if isinstance(code, Mistake):
        likely = f"; did you mean {code.instead}?" if code.instead else ""
        return CalculatorAnswer(mistakes={"code": code.message + likely})
    lines = [
        AnswerLine("DTC", str(code)),
        AnswerLine("System", CODE_SYSTEMS[str(code)[0]]),
        AnswerLine("Defined by", CODE_OWNERS[code_owner(code)]),
        AnswerLine("Bytes on the network", code_bytes(code).hex(" ").upper()),
    ]
    return CalculatorAnswer((*lines, *_failure_type(code)))


def _failure_type(code: Code) -> tuple[AnswerLine, ...]:
    if code.failure_type is None:
        return ()
    byte = failure_type_byte(code.failure_type)
    text = f"{byte.number:02X}, {byte.words or 'not in our list'}; kind: {byte.category}"
    step = SETUP_STEP_MISSING.get(byte.number)
    missing = (AnswerLine("Missing setup step", step),) if step else ()
    return (AnswerLine("Failure type", text), *missing)


def _vin(entries: Mapping[str, str]) -> CalculatorAnswer:
    vin = parse_vin(entries["vin"])
    if isinstance(vin, Mistake):
        likely = f" Did you mean {vin.instead}?" if vin.instead else ""
        return CalculatorAnswer(mistakes={"vin": vin.message + likely})
    digit = check_digit(vin.text)
    lines = [AnswerLine("VIN", vin.text)]
    if digit == vin.text[8]:
        lines.append(AnswerLine("Check digit", f"{digit}, matches"))
    lines += [AnswerLine("Recheck", doubt) for doubt in vin.doubts]
    years = model_years(vin, light=entries.get("class") == LIGHT_VEHICLE)
    if years:
        lines.append(AnswerLine("Model year", " or ".join(map(str, years))))
    return CalculatorAnswer(tuple(lines))


def _refusal(entries: Mapping[str, str]) -> CalculatorAnswer:
    refusal = parse_refusal(entries["refusal"])
    if isinstance(refusal, Mistake):
        return CalculatorAnswer(mistakes={"refusal": refusal.message})
    number = f"{refusal.number:02X}"
    return CalculatorAnswer(
        (
            AnswerLine("Refusal", f"{number}, {refusal.name}" if refusal.name else number),
            AnswerLine("Means", refusal.means),
            AnswerLine("Next", NEXT_STEPS[refusal.kind]),
        )
    )


LOOKUPS: Mapping[str, Callable[[Mapping[str, str]], CalculatorAnswer]] = {
    "bus": _bus,
    "units": _units,
    "dtc": _code,
    "vin": _vin,
    "refusal": _refusal,
}
LOOKUP_FIELDS: Mapping[str, str] = {  # what must be filled in before there is an answer
    "bus": "ohms",
    "units": "reading",
    "dtc": "code",
    "vin": "vin",
    "refusal": "refusal",
}
