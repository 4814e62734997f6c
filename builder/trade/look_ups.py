"""The look-ups of the bench page: a bus resistance, a reading in other units, a code, a number.

In: what was typed beside each field, as text. Out: an `Answer`, as of `sums`, whose formulae can do
most of a bench's arithmetic; here stands what is found in a list rather than worked out.
"""

from collections.abc import Callable, Mapping
from fractions import Fraction

from builder.trade.bus import bus_state, bus_states
from builder.trade.codes import SYSTEMS, Code, code_bytes, owner, parse_code
from builder.trade.failure_types import SET_UP_MISSING, failure_type
from builder.trade.mistake import Mistake
from builder.trade.quantities import Over, typed_quantity
from builder.trade.refusal_codes import NEXT_STEPS
from builder.trade.refusals import parse_refusal
from builder.trade.sums import OVER_THE_RANGE, SUMS, Answer, Line, number_line, worked_out
from builder.trade.units import UNITS, convert
from builder.trade.vehicle_numbers import check_digit, model_years, parse_vehicle_number

UNIT_DIGITS = 6  # of a value in another unit
LEAST, MOST = Fraction(1, 1000), Fraction(1_000_000)  # units that take a value beyond are left out
OWNERS: Mapping[str, str] = {
    "standard": "the standard",
    "maker": "the maker: look it up in the maker's service information",
}
LIGHT, NOT_KNOWN = "car, or truck up to 4536 kg (10 000 lb)", "heavier, a trailer, or not known"


def answer(id_: str, typed: Mapping[str, str]) -> Answer:
    """Answer what was typed into the form of that name."""
    if id_ in LOOK_UPS:
        typed = {name: text.strip() for name, text in typed.items()}
        return LOOK_UPS[id_](typed) if typed.get(FIELD_OF[id_]) else Answer()
    return worked_out(next(one for one in SUMS if one.id == id_), typed)


def _bus(typed: Mapping[str, str]) -> Answer:
    found = typed_quantity(typed["ohms"], "ohm")
    if isinstance(found, Over):
        states = bus_states()
        assert not isinstance(states, Mistake)
        return Answer((Line("This shows", states[-1].name),))
    state = (
        found if isinstance(found, Mistake) else bus_state(convert(found.value, found.unit, "ohm"))
    )
    if isinstance(state, Mistake):
        return Answer(mistakes={"ohms": state.message})
    return Answer((Line("This shows", state),))


def _units(typed: Mapping[str, str]) -> Answer:
    found = typed_quantity(typed["reading"])
    if isinstance(found, Mistake):
        return Answer(mistakes={"reading": found.message})
    if isinstance(found, Over):
        return Answer(mistakes={"reading": OVER_THE_RANGE})
    own = UNITS[found.unit]
    others = [one for one in UNITS.values() if one.kind == own.kind and one != own]
    if not others:
        return Answer((Line("", f"{own.sign} stands alone"),))
    values = [(convert(found.value, found.unit, one.symbol), one.symbol) for one in others]
    plain = [pair for pair in values if LEAST <= abs(pair[0]) < MOST]
    return Answer(tuple(number_line("", *pair, UNIT_DIGITS) for pair in plain or values))


def _code(typed: Mapping[str, str]) -> Answer:
    found = parse_code(typed["code"])
    if isinstance(found, Mistake):
        likely = f"; did you mean {found.instead}?" if found.instead else ""
        return Answer(mistakes={"code": found.message + likely})
    lines = [
        Line("Code", str(found)),
        Line("System", SYSTEMS[str(found)[0]]),
        Line("Meaning given by", OWNERS[owner(found)]),
        Line("On the network", code_bytes(found).hex(" ").upper()),
    ]
    return Answer((*lines, *_failure_type(found)))


def _failure_type(code: Code) -> tuple[Line, ...]:
    if code.failure_type is None:
        return ()
    found = failure_type(code.failure_type)
    lines = [
        Line(
            "Failure type",
            f"{code.failure_type:02X}, {found.words or 'not in our list'}; kind: {found.category}",
        )
    ]
    verb = SET_UP_MISSING.get(code.failure_type)
    return (*lines, Line("Set-up step missing", verb)) if verb else tuple(lines)


def _vehicle_number(typed: Mapping[str, str]) -> Answer:
    found = parse_vehicle_number(typed["number"])
    if isinstance(found, Mistake):
        likely = f" Perhaps {found.instead}." if found.instead else ""
        return Answer(mistakes={"number": found.message + likely})
    digit = check_digit(found.text)
    lines = [Line("Vehicle number", found.text)]
    if digit == found.text[8]:
        lines.append(Line("Check digit", f"{digit}, right"))
    lines += [Line("Look again", doubt) for doubt in found.doubts]
    years = model_years(found, light=typed.get("class") == LIGHT)
    if years:
        lines.append(Line("Model year", " or ".join(map(str, years))))
    return Answer(tuple(lines))


def _refusal(typed: Mapping[str, str]) -> Answer:
    found = parse_refusal(typed["refusal"])
    if isinstance(found, Mistake):
        return Answer(mistakes={"refusal": found.message})
    number = f"{found.number:02X}"
    return Answer(
        (
            Line("Refusal", f"{number}, {found.name}" if found.name else number),
            Line("It means", found.means),
            Line("Do this", NEXT_STEPS[found.kind]),
        )
    )


LOOK_UPS: Mapping[str, Callable[[Mapping[str, str]], Answer]] = {
    "bus": _bus,
    "units": _units,
    "code": _code,
    "vehicle-number": _vehicle_number,
    "refusal": _refusal,
}
FIELD_OF: Mapping[str, str] = {  # what must be filled in before there is an answer
    "bus": "ohms",
    "units": "reading",
    "code": "code",
    "vehicle-number": "number",
    "refusal": "refusal",
}
