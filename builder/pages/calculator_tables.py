"""The reference tables of the calculators, which need no JavaScript and can be printed.

In: the tables of `trade/`. Out: a `ReferenceTable` for each form that has one.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.trade.battery import CHARGE_ROWS, LOAD_TEST_ROWS
from builder.trade.bus import bus_states
from builder.trade.exact import round_digits
from builder.trade.failure_types import FAILURE_TYPE_WORDS, failure_type_byte
from builder.trade.lookups import UNIT_DIGITS
from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import NEXT_STEPS, REFUSALS
from builder.trade.units import UNITS
from builder.trade.vin import FIRST_YEAR, YEAR_CODES, YEAR_CYCLE
from builder.trade.wires import OHMS_PER_KM_BY_AREA, OHMS_PER_KM_BY_GAUGE

TableRow = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ReferenceTable:
    """A table with its caption and its column heads."""

    caption: str
    head: TableRow
    rows: tuple[TableRow, ...]


def _number(value: Fraction, digits: int = 4) -> str:
    return f"{round_digits(value, digits):f}".replace("-", "−")


def _bus() -> Iterator[TableRow]:
    states = bus_states()
    assert not isinstance(states, Mistake)
    for state in states:
        top = "no limit" if state.high is None else f"{_number(state.high)} Ω"
        yield f"{_number(state.low)} Ω", top, state.name


def _wires() -> Iterator[TableRow]:
    for gauge, ohms in OHMS_PER_KM_BY_GAUGE.items():
        yield f"AWG {gauge}", _number(ohms)
    for area, ohms in OHMS_PER_KM_BY_AREA.items():
        yield f"{area} mm²", _number(ohms)


def _load_test() -> Iterator[TableRow]:
    for fahrenheit, volts in LOAD_TEST_ROWS[1:-1]:
        celsius = (fahrenheit - 32) * Fraction(5, 9)
        yield f"{_number(celsius, 3)} °C", f"{_number(fahrenheit)} °F", f"{_number(volts)} V"


def _units() -> Iterator[TableRow]:
    """Yield each unit in the base unit of its kind."""
    plain = (unit for unit in UNITS.values() if unit.factor == 1 and not unit.offset)
    bases = {unit.kind: unit.label for unit in plain}
    bases |= {"pressure": "Pa", "volume": "m³", "air flow": "kg/s", "speed": "m/s"}
    bases |= {"charge": "C (A·s)", "energy": "J"}
    for unit in UNITS.values():
        value = f"{_number(unit.factor, UNIT_DIGITS)} {bases[unit.kind]}"
        if unit.offset:
            value = f"{unit.factor} × (value {_number(unit.offset / unit.factor)}) °C"
        if unit.factor != 1:
            yield unit.kind, f"1 {unit.label}", value.replace("(value −", "(value − ")


def _years() -> Iterator[TableRow]:
    for position, character in enumerate(YEAR_CODES):
        year = FIRST_YEAR + position
        yield character, str(year), str(year + YEAR_CYCLE)


def reference_tables() -> Mapping[str, ReferenceTable]:
    """Return the tables by the id of their form."""
    types = ((f"{number:02X}", failure, failure_type_byte(number).category)
             for number, failure in FAILURE_TYPE_WORDS.items())  # fmt: skip
    refusals = ((f"{code.number:02X}", code.name, code.means, NEXT_STEPS[code.kind])
                for code in REFUSALS.values())  # fmt: skip
    charge = ((f"{_number(volts)} V", f"{share} %") for volts, share in CHARGE_ROWS[1:-1])
    return {
        "bus": ReferenceTable("Resistance by state", ("From", "To", "Shows"), tuple(_bus())),
        "wire": ReferenceTable(
            "Resistance of copper wire at 20 °C", ("Size", "mΩ per meter"), tuple(_wires())
        ),
        "battery-charge": ReferenceTable(
            "State of charge at 80 °F (26.7 °C)",
            ("Open-circuit voltage", "State of charge"),
            tuple(charge),
        ),
        "load-test": ReferenceTable(
            "Lowest voltage after 15 s", ("Battery at", "or", "Pass at"), tuple(_load_test())
        ),
        "units": ReferenceTable("Units by definition", ("Measures", "Unit", "Is"), tuple(_units())),
        "dtc": ReferenceTable("Failure types", ("Number", "Failure", "Kind"), tuple(types)),
        "vin": ReferenceTable(
            "Model year by position 10", ("Character", "Year", "or"), tuple(_years())
        ),
        "refusal": ReferenceTable("Refusals", ("Number", "Name", "Means", "Next"), tuple(refusals)),
    }
