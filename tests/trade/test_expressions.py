"""Computed readings against Python's own parser, and their cases for a page's script.

`cases/computed.json` is the table that the page's script is run through as well: text, values as
typed, compiled form, result. Renew it with `python tests/trade/test_expressions.py` and read the
difference before keeping it.
"""

import json
import re
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.trade.battery import drain_days, load_test_limit, state_of_charge
from builder.trade.exact import round_digits
from builder.trade.expressions import (
    Expression,
    bounds_of_expression,
    compile_expression,
    evaluate_expression,
    parse_expression,
    run_form,
    unit_of_expression,
)
from builder.trade.functions import FUNCTIONS, OPERATIONS
from builder.trade.mistake import Mistake
from builder.trade.sensors import interpolate_log, interpolate_log_back
from builder.trade.wires import area_ohms, gauge_ohms

CASES = Path(__file__).parent / "cases" / "computed.json"

VALUES = {
    "battery": "12.61", "lamp": "12.4", "amps": "3.5", "coolant": "30", "low": "-7.25",
    "none": "0", "front-left": "0.35", "ohms": "8141",
}  # fmt: skip
THERMISTOR = "-20, 107095, 0, 33900, 20, 12555, 40, 5279"
TEXTS = (
    "battery - lamp",
    "(battery − lamp) ÷ amps",
    "battery * amps",
    "-low × 2 + 3 · 4",
    "2 - 3 - 4",
    "2 / 3 / 4",
    "2 * 3 / 4",
    "largest(2 + 3, 4)",
    "2 + 3 * 4 - 5 / 6",
    "0.1 + 0.2 - 0.3",
    "1 / 3",
    "100000 / 7 * 1000000",
    "parallel(120, 120)",
    "parallel(120, ohms, 47)",
    "parallel(120, none)",
    "series(120, 47, ohms)",
    "series(ohms)",
    "divider(5, 2200, 10000)",
    "largest(battery, lamp, amps)",
    "smallest(battery, lamp, amps) / largest(battery, lamp, amps) * 100",
    "average(battery, lamp, amps)",
    "difference(low, battery)",
    "difference(battery, low)",
    "front-left * 2",
    "table(coolant, 0, 1, 40, 2)",
    "table_back(amps, 0, 5, 40, 2)",
    f"log_table(coolant, {THERMISTOR})",
    f"log_table_back(ohms, {THERMISTOR})",
    "log_table_back(4, 0, 2, 1, 8)",
    "battery_charge(battery)",
    "load_test_limit(low)",
    "drain_days(60, 50)",
    "wire_awg(1/0, 3)",
    "wire_awg(18, amps, coolant)",
    "wire_mm2(2.5, 3, 80)",
    # No value: a division by zero, a figure outside a table.
    "battery / none",
    "divider(5, none, 0)",
    "parallel(low, 120)",
    "table(battery, 0, 1, 10, 2)",
    "battery_charge(amps)",
)


def _values() -> dict[str, Decimal]:
    return {name: Decimal(value) for name, value in VALUES.items()}


def _parsed(text: str) -> Expression:
    found = parse_expression(text)
    assert isinstance(found, Expression), found
    return found


def _cases() -> list[dict[str, object]]:
    cases = []
    for text in TEXTS:
        expression = _parsed(text)
        found = evaluate_expression(expression, _values())
        result = None if isinstance(found, Mistake) else str(found)
        used = {name: VALUES[name] for name in expression.names}
        form = compile_expression(expression)
        cases.append({"text": text, "values": used, "compiled": form, "result": result})
    return cases


def test_the_table_of_cases_stands():
    """The cases that a page's script is run through are what the room computes today."""
    assert json.loads(CASES.read_text("utf-8")) == _cases()


def test_the_cases_cover_every_operation():
    """No operation and no function reaches a page without a case."""
    compiled_text = json.dumps([case["compiled"] for case in _cases()])
    assert all(f'["{name}", ' in compiled_text for name in OPERATIONS)
    assert all(any(f"{name}(" in text for text in TEXTS) for name in FUNCTIONS)


def test_a_compiled_form_survives_json():
    """What JSON carries to the page gives the same value as what stayed here."""
    for text in TEXTS:
        form = compile_expression(_parsed(text))
        assert run_form(json.loads(json.dumps(form)), _values()) == run_form(form, _values())


OPERANDS = st.one_of(
    st.sampled_from(["battery", "lamp", "amps", "low", "none"]),
    st.decimals(0, 1000, places=2).map(str),
)
SUMS = st.recursive(
    OPERANDS,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(" ".join),
        inner.map("({})".format),
        inner.map("-{}".format),
    ),
    max_leaves=12,
)


@given(SUMS)
def test_python_reads_the_same_sum(text):
    """Python's parser and its fractions, an independent grammar, give the same value."""
    expression = parse_expression(text)
    if isinstance(expression, Mistake):
        assert "brackets within brackets" in expression.message
        return
    names = {name: Fraction(value) for name, value in VALUES.items() if "-" not in name}
    literal = re.sub(r"(?<![\w.])(\d+\.?\d*)", r'Fraction("\1")', text)
    try:
        theirs = eval(literal, {"Fraction": Fraction}, names)
    except ZeroDivisionError:
        assert isinstance(evaluate_expression(expression, _values()), Mistake)
        return
    assert evaluate_expression(expression, _values()) == round_digits(theirs)


@given(st.text(alphabet="ab1.0 +-*/(),×÷−parel", max_size=30))
def test_any_text_gets_an_answer(text):
    """No text brings the parser down, and what parses also compiles and runs."""
    expression = parse_expression(text)
    if isinstance(expression, Expression):
        values = dict.fromkeys(expression.names, Decimal("1.5"))
        assert isinstance(evaluate_expression(expression, values), Decimal | Mistake)
        units = dict.fromkeys(expression.names, "V")
        assert isinstance(unit_of_expression(expression, units), str | Mistake)


@pytest.mark.parametrize(
    ("text", "says", "at"),
    [
        ("", "missing at the end", 0),
        ("battery +", "missing at the end", 9),
        ("battery + * lamp", "missing before *", 10),
        ("(battery", "never closed", 0),
        ("parallel(120", "never closed", 8),
        ("battery lamp", "nothing joins lamp", 8),
        ("battery)", "nothing joins )", 7),
        ("()", "missing before )", 1),
        ("2 % 3", "% has no meaning", 2),
        ("0,5 + 1", "write 0.5", 0),
        ("parallel(120,60)", "blank after the comma", 9),
        ("12V + 1", "12V is no plain number", 0),
        ("1e3", "no plain number", 0),
        ("1.2.3", "no plain number", 0),
        ("paralel(1, 2)", "did you mean parallel", 0),
        ("xyz(1)", "there are parallel", 0),
        ("parallel()", "at least 1 figures, here are 0", 0),
        ("1 + largest(1)", "at least 2 figures", 4),
        ("difference(1, 2, 3)", "takes 2 figures, here are 3", 0),
        ("battery_charge(1, 2)", "takes 1 figure, here are 2", 0),
        ("wire_awg(18, 1, 2, 3)", "takes 2 to 3 figures", 0),
        ("table(1, 2, 3, 4)", "at least 5 figures", 0),
        ("log_table_back(1, 2, 3, 4)", "at least 5 figures", 0),
        ("table(1, 2, 3, 4, 5, 6)", "pairs of written numbers", 0),
        ("table(1, 2, 3, 4, lamp)", "pairs of written numbers", 0),
        ("table(1, 2, 3, 2, 5)", "must rise", 0),
        ("table_back(1, 2, 3, 4, 3)", "rise all the way", 0),
        ("log_table(1, 2, 0, 4, 3)", "above zero", 0),
        ("wire_awg(5/0, 1)", "no wire size", 9),
        ("wire_mm2(3, 1)", "0.5, 0.75", 9),
        ("1" * 401, "longer than 400", 0),
        ("(" * 21 + "1" + ")" * 21, "more than 20 brackets", 21),
        ("-" * 21 + "1", "more than 20 brackets", 21),
    ],
)
def test_what_is_wrong_is_said_at_its_place(text, says, at):
    """Text that is no computed reading is answered with what is wrong in it and where."""
    found = parse_expression(text)
    assert isinstance(found, Mistake)
    assert says in found.message
    assert found.at == at


def test_the_limits_are_the_last_that_pass():
    """400 characters and 20 brackets are still read."""
    assert isinstance(parse_expression("1" * 400), Expression)
    assert isinstance(parse_expression("(" * 20 + "1" + ")" * 20), Expression)


def test_a_mistake_covers_what_is_wrong():
    """The length of a mistake is that of the wrong piece, one sign where there is none."""
    lengths = {"battery +": 1, "2 % 3": 1, "battery lamp": 4, "12V + 1": 3, "xyz(1)": 3}
    for text, length in lengths.items():
        assert parse_expression(text).length == length


def test_calls_within_calls_count_as_brackets():
    """Twenty calls within calls are read, one more is not."""
    assert isinstance(parse_expression("series(" * 20 + "1" + ")" * 20), Expression)
    assert isinstance(parse_expression("series(" * 21 + "1" + ")" * 21), Mistake)


def test_names_in_order_each_once():
    """An expression says which readings it needs."""
    assert _parsed("b - a + parallel(a, c) * 2").names == ("b", "a", "c")


def test_a_reading_that_was_not_taken():
    """Without a reading, or with one that is no number, there is no value."""
    assert "has not been taken" in evaluate_expression(_parsed("a + b"), {"a": Decimal(1)}).message
    assert "no number" in evaluate_expression(_parsed("a"), {"a": Decimal("NaN")}).message


def test_functions_are_those_of_the_room():
    """What an author writes and what the room computes are one thing."""
    values = _values()

    def exactly(text: str) -> object:
        return run_form(compile_expression(_parsed(text)), values)

    assert exactly("battery_charge(battery)") == state_of_charge(values["battery"])
    assert exactly("load_test_limit(low)") == load_test_limit(values["low"])
    assert exactly("drain_days(60, 50)") == drain_days(60, 50)
    assert exactly("wire_awg(1/0, amps, low)") == gauge_ohms("1/0", values["amps"], values["low"])
    assert exactly("wire_awg(18, amps)") == gauge_ohms("18", values["amps"])
    assert exactly("wire_mm2(0.75, amps, low)") == area_ohms("0.75", values["amps"], values["low"])
    rows = [(-20, 107095), (0, 33900), (20, 12555), (40, 5279)]
    assert exactly(f"log_table(coolant, {THERMISTOR})") == interpolate_log(rows, 30)
    assert exactly(f"log_table_back(ohms, {THERMISTOR})") == interpolate_log_back(rows, 8141)


UNITS = {
    "battery": "V", "lamp": "V", "amps": "A", "drop": "mV", "drain": "mA", "pull-up": "kohm",
    "ohms": "Ω", "coolant": "C", "outside": "°C", "cabin": "°F", "rise": "K", "period": "ms",
    "turns": "rpm", "boost": "psi", "hours": "h", "speed": "km/h", "odd": "furlong", "gap": "mm",
}  # fmt: skip


@pytest.mark.parametrize(
    ("text", "symbol"),
    [
        ("battery - lamp", "V"),
        ("battery - 0.5", "V"),
        ("(battery - lamp) / amps", "ohm"),
        ("drop / drain", "ohm"),
        ("drop / amps", "mohm"),
        ("battery / drain", "kohm"),
        ("drain * pull-up", "V"),
        ("battery * amps", "W"),
        ("amps * hours", "Ah"),
        ("battery * amps * hours", "Wh"),
        ("speed * hours", "km"),
        ("1 / period", "kHz"),
        ("1 / turns * turns", ""),
        ("battery / lamp", ""),
        ("battery / lamp * 100", ""),
        ("battery / lamp + 1", ""),
        ("2 * battery / 3", "V"),
        ("battery * (lamp / lamp)", "V"),
        ("1 + 2 * 3 / 4", ""),
        ("-battery", "V"),
        ("coolant - outside", "K"),
        ("cabin - 100 ", "°F"),
        ("100 - cabin", "degF diff"),
        ("coolant + rise", "°C"),
        ("rise + coolant", "°C"),
        ("coolant - rise", "°C"),
        ("5 + coolant", "°C"),
        ("average(coolant, outside)", "°C"),
        ("difference(coolant, outside)", "K"),
        ("difference(battery, lamp)", "V"),
        ("largest(battery, lamp, 12)", "V"),
        ("parallel(120, 120)", "ohm"),
        ("parallel(pull-up, pull-up)", "kohm"),
        ("series(ohms, ohms)", "ohm"),
        ("divider(battery, pull-up, pull-up)", "V"),
        ("table(coolant, 0, 1, 40, 2)", ""),
        ("table(coolant, 0, 1, 40, 2) - ohms", "ohm"),
        ("battery_charge(battery)", "%"),
        ("load_test_limit(coolant)", "V"),
        ("drain_days(amps * hours, drain)", "days"),
        ("wire_awg(12, 3)", "ohm"),
        ("wire_awg(12, 3) * amps", "V"),
        ("gap * 2", "mm"),
    ],
)
def test_units_come_out_as_a_physicist_would_say(text, symbol):
    """Ohm's law and its kin hold for the units too, prefixes included."""
    assert unit_of_expression(_parsed(text), UNITS) == symbol


@pytest.mark.parametrize(
    ("text", "says", "at"),
    [
        ("battery - drop", "V and mV cannot be added", 0),
        ("1 + (battery - amps)", "V and A", 5),
        ("drop * drain", "no unit in use fits", 0),
        ("boost / battery", "nothing that a shop measures", 0),
        ("boost * battery", "nothing that a shop measures", 0),
        ("1 / battery", "nothing that a shop measures", 0),
        ("battery / drop", "bring both to one unit", 0),
        ("coolant + outside", "cannot be added", 0),
        ("coolant + cabin", "cannot be added", 0),
        ("coolant * 2", "cannot be multiplied", 0),
        ("2 / coolant", "cannot be multiplied", 0),
        ("-coolant", "no negative", 0),
        ("battery + battery / lamp", "V and a plain number", 0),
        ("batery - lamp", "did you mean battery", 0),
        ("lamp - xyzzy", "there are battery", 7),
        ("battery-lamp", "write battery - lamp", 0),
        ("battery-5", "write battery - 5", 0),
        ("odd + 1", "furlong is no unit", 0),
        ("parallel(battery, 120)", "wants resistance here, not V", 9),
        ("parallel(ohms, pull-up)", "in one unit, not in ohm and kohm", 0),
        ("largest(battery, amps)", "in one unit", 0),
        ("wire_awg(12, lamp)", "wants m here, not V", 13),
        ("battery_charge(drop)", "wants V here, not mV", 15),
        ("load_test_limit(rise)", "wants °C here, not K", 16),
        ("drain_days(60, amps)", "wants mA here, not A", 15),
        ("parallel(battery / lamp, 120)", "not a plain number", 9),
    ],
)
def test_units_that_do_not_fit_are_named(text, says, at):
    """Mixed, mistaken and meaningless units are a mistake at their place."""
    found = unit_of_expression(_parsed(text), UNITS)
    assert isinstance(found, Mistake)
    assert says in found.message
    assert found.at == at


def test_a_name_that_ran_together_is_pulled_apart():
    """A minus without blanks makes one name of two; the right text is offered."""
    found = unit_of_expression(_parsed("battery-lamp"), UNITS)
    assert isinstance(found, Mistake)
    assert found.instead == "battery - lamp"


RANGES = {"a": ("1", "5"), "b": ("-2", "3"), "c": ("10", "20")}


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("a + b", "-1", "8"),
        ("a - b", "-2", "7"),
        ("a * b", "-10", "15"),
        ("b / a", "-2", "3"),
        ("c / a", "2", "20"),
        ("-b", "-3", "2"),
        ("difference(a, b)", "0", "7"),
        ("difference(c, a)", "5", "19"),
        ("parallel(a, c)", "0.909090909090", "4"),
        ("divider(c, a, a)", "1.66666666666", "16.6666666667"),
        ("largest(a, b, c)", "10", "20"),
        ("smallest(a, b)", "-2", "3"),
        ("average(a, b)", "-0.5", "4"),
        ("table(a, 0, 0, 2, 10, 10, 0)", "5", "10"),
        ("table(b, 0, 0, 2, 10)", "0", "10"),
        ("table_back(a, 0, 8, 10, 0)", "3.75", "8.75"),
        ("7", "7", "7"),
    ],
)
def test_bounds(text, low, high):
    """The lowest and highest value, calculated by hand."""
    ranges = {name: (Decimal(one), Decimal(two)) for name, (one, two) in RANGES.items()}
    assert bounds_of_expression(_parsed(text), ranges) == (Decimal(low), Decimal(high))


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("a / b", "can divide by zero"),
        ("parallel(b, 1)", "none below zero"),
        ("table(c, 0, 0, 2, 10)", "outside the table"),
        ("a + d", "unknown"),
    ],
)
def test_bounds_that_do_not_exist_say_so(text, says):
    """Where some reading in range gives no value, the tree must say more."""
    ranges = {name: (Decimal(one), Decimal(two)) for name, (one, two) in RANGES.items()}
    found = bounds_of_expression(_parsed(text), ranges)
    assert isinstance(found, Mistake)
    assert says in found.message


@pytest.mark.parametrize("pair", [("5", "1"), ("NaN", "1"), ("0", "Infinity")])
def test_a_range_that_is_none_is_refused(pair):
    """Limits must be numbers and in order."""
    found = bounds_of_expression(_parsed("a"), {"a": (Decimal(pair[0]), Decimal(pair[1]))})
    assert isinstance(found, Mistake)


SHARES = st.lists(st.integers(0, 10), min_size=3, max_size=3)


@given(text=st.one_of(SUMS, st.sampled_from(TEXTS)), shares=SHARES)
def test_no_value_escapes_its_bounds(text, shares):
    """Whatever the readings within their ranges, the value lies within the bounds."""
    expression = parse_expression(text)
    if isinstance(expression, Mistake):
        return
    base = {name: Decimal(value) for name, value in VALUES.items()}
    ranges = {name: (value - 1, value + 2) for name, value in base.items()}
    found = bounds_of_expression(expression, ranges)
    if isinstance(found, Mistake):
        return
    values = {
        name: low + (high - low) * shares[at % 3] / 10
        for at, (name, (low, high)) in enumerate(ranges.items())
    }
    value = evaluate_expression(expression, values)
    if isinstance(value, Decimal):
        slack = abs(value) * Decimal("1e-11")
        assert found[0] - slack <= value <= found[1] + slack


if __name__ == "__main__":
    CASES.parent.mkdir(exist_ok=True)
    lines = ",\n".join(json.dumps(case, ensure_ascii=False) for case in _cases())
    CASES.write_text(f"[\n{lines}\n]\n", "utf-8")
