"""The tables of the bench page, for whoever has no scripts or wants the whole of it on paper.

In: nothing but the trade's own tables. Out: a `Table` for each form that has one.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.trade.battery import CHARGE_ROWS, LOAD_TEST_ROWS
from builder.trade.bus import bus_states
from builder.trade.exact import rounded
from builder.trade.failure_types import WORDS, failure_type
from builder.trade.look_ups import UNIT_DIGITS
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import NEXT_STEPS, REFUSALS
from builder.trade.units import UNITS
from builder.trade.vehicle_numbers import CYCLE, FIRST_YEAR, YEAR_CODES
from builder.trade.wires import OHMS_PER_KM_BY_AREA, OHMS_PER_KM_BY_GAUGE

Row = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table: what it is called, its head, its rows."""

    caption: str
    head: Row
    rows: tuple[Row, ...]


def _number(value: Fraction, digits: int = 4) -> str:
    return f"{rounded(value, digits):f}".replace("-", "−")


def _bus() -> Iterator[Row]:
    states = bus_states()
    assert not isinstance(states, Mistake)
    for state in states:
        top = "no end" if state.high is None else f"{_number(state.high)} Ω"
        yield f"{_number(state.low)} Ω", top, state.name


def _wires() -> Iterator[Row]:
    for gauge, ohms in OHMS_PER_KM_BY_GAUGE.items():
        yield f"AWG {gauge}", _number(ohms)
    for area, ohms in OHMS_PER_KM_BY_AREA.items():
        yield f"{area} mm²", _number(ohms)


def _load_test() -> Iterator[Row]:
    for fahrenheit, volts in LOAD_TEST_ROWS[1:-1]:
        celsius = (fahrenheit - 32) * Fraction(5, 9)
        yield f"{_number(celsius, 3)} °C", f"{_number(fahrenheit)} °F", f"{_number(volts)} V"


def _units() -> Iterator[Row]:
    """Yield each unit in the base unit of its kind."""
    bases = {one.kind: one.sign for one in UNITS.values() if one.factor == 1 and not one.offset}
    bases |= {"pressure": "Pa", "volume": "m³", "air flow": "kg/s", "speed": "m/s"}
    bases |= {"charge": "C (A·s)", "energy": "J"}
    for one in UNITS.values():
        value = f"{_number(one.factor, UNIT_DIGITS)} {bases[one.kind]}"
        if one.offset:
            value = f"{one.factor} × (value {_number(one.offset / one.factor)}) °C"
        if one.factor != 1:
            yield one.kind, f"1 {one.sign}", value.replace("(value −", "(value − ")


def _years() -> Iterator[Row]:
    for at, sign in enumerate(YEAR_CODES):
        yield sign, str(FIRST_YEAR + at), str(FIRST_YEAR + at + CYCLE)


def tables() -> Mapping[str, Table]:
    """Return the tables by the id of their form."""
    types = ((f"{number:02X}", words, failure_type(number).category)
             for number, words in WORDS.items())  # fmt: skip
    refusals = ((f"{one.number:02X}", one.name, one.means, NEXT_STEPS[one.kind])
                for one in REFUSALS.values())  # fmt: skip
    rest = ((f"{_number(volts)} V", f"{share} %") for volts, share in CHARGE_ROWS[1:-1])
    return {
        "bus": Table("Resistance and what it shows", ("From", "To", "It shows"), tuple(_bus())),
        "wire": Table(
            "Resistance of copper wire at 20 °C", ("Size", "mΩ for each metre"), tuple(_wires())
        ),
        "rest": Table(
            "State of charge at 80 °F (26.7 °C)",
            ("Open-circuit voltage", "State of charge"),
            tuple(rest),
        ),
        "load-test": Table(
            "Least voltage after 15 s", ("Battery at", "or", "Least voltage"), tuple(_load_test())
        ),
        "units": Table("Units by definition", ("Measures", "Unit", "Is"), tuple(_units())),
        "code": Table("Failure types", ("Number", "Failure", "Kind"), tuple(types)),
        "vehicle-number": Table(
            "Model year by position 10", ("Sign", "Year", "or"), tuple(_years())
        ),
        "refusal": Table("Refusals", ("Number", "Name", "It means", "Do this"), tuple(refusals)),
    }
