"""Calculators and lookups: one table of cases, which the page in a browser passes too."""

import json
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from builder.trade.as_data import calculator_data, units_data
from builder.trade.calculators import CALCULATORS, scale_to_unit
from builder.trade.circuits import current, divider, voltage_drop
from builder.trade.codes import Code, code_owner
from builder.trade.lookups import calculator_answer
from builder.trade.mistake import Mistake
from builder.trade.refusals import explain_refusal
from builder.trade.wires import area_ohms, gauge_ohms

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parent / "cases" / "calculators.json").read_text("utf-8")
)


@pytest.mark.parametrize(
    "case", CASES, ids=[f"{one['calculator']} {' '.join(one['typed'].values())}" for one in CASES]
)
def test_an_answer_is_what_the_table_says(case: dict[str, Any]) -> None:
    """Figures, words and the sentence beside a wrong field: as in the table, to the last digit."""
    found = calculator_answer(case["calculator"], case["typed"])
    assert [[line.label, line.text, line.exact] for line in found.lines] == case["lines"]
    assert found.mistakes == case["mistakes"]
    assert case["source"]


def test_the_formulas_are_those_of_the_functions() -> None:
    """A calculator's formula gives what the function of the trade gives."""
    drop = calculator_answer("drop", {"amps": "3.5", "ohms": "0.2"}).lines[0].exact
    assert drop == f"{voltage_drop(Decimal('3.5'), Decimal('0.2')) * 1000} mV"
    amps = calculator_answer("drop", {"volts": "9", "ohms": "4"}).lines[0].exact
    assert Fraction(amps.removesuffix(" A")) == current(9, 4)
    volts = calculator_answer("divider", {"supply": "9", "top": "1", "bottom": "2"}).lines[0].exact
    assert Fraction(volts.removesuffix(" V")) == divider(9, 1, 2)
    for size, ohms in (
        ("AWG 1/0", gauge_ohms("1/0", 100, 50)),
        ("2.5 mm²", area_ohms("2.5", 100, 50)),
    ):
        line = calculator_answer("wire", {"size": size, "length": "100", "celsius": "50"}).lines[0]
        assert isinstance(ohms, Fraction)
        value, sign = line.exact.split()
        assert Fraction(value) / (1000 if sign == "mΩ" else 1) == ohms


@pytest.mark.parametrize(
    ("value", "symbol", "shown"),
    [
        ("0.02", "ohm", (20, "mohm")),
        ("999", "ohm", (999, "ohm")),
        ("1000", "ohm", (1, "kohm")),
        ("-0.5", "V", (-500, "mV")),
        ("0", "V", (0, "V")),
        ("5000000000", "ohm", (5000, "Mohm")),
        ("2000", "W", (2000, "W")),
    ],
)
def test_an_answer_is_in_the_unit_one_would_say_it_in(
    value: str, symbol: str, shown: tuple[int, str]
) -> None:
    """20 mΩ and not 0.02 Ω; what has no family of units stays as it is."""
    assert scale_to_unit(Fraction(value), symbol) == shown


def test_the_data_of_a_script_is_what_the_functions_say() -> None:
    """The ranges of makers' codes are those of `owner`; every sum and unit is there, as text."""
    data = json.loads(json.dumps(calculator_data()))
    makers = data["codes"]["makers"]
    for number in range(0x10000):
        inside = any(low <= number <= high for low, high in makers)
        assert inside == (code_owner(Code(number)) == "maker")
    known = {int(number) for number in data["refusals"]["list"]}
    for low, high, *_ in data["refusals"]["ranges"]:
        known |= set(range(low, high + 1))
    assert known == {one for one in range(0x100) if not isinstance(explain_refusal(one), Mistake)}
    assert set(data["formulas"]) == {one.id for one in CALCULATORS}
    assert units_data()["list"]["psi"][0] == "pressure"
    assert Fraction(units_data()["list"]["in"][1]) == Fraction("0.0254")  # NIST SP 811, exact
