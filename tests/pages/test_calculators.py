"""The calculators page: its forms, examples, and tables, and that no number is written twice."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.text import Text
from builder.pages.calculator_forms import CALCULATOR_FORMS
from builder.pages.calculator_tables import reference_tables
from builder.pages.calculators import calculator_files, calculators_page
from builder.trade.calculators import CALCULATORS
from builder.trade.lookups import LOOKUPS, calculator_answer
from builder.trade.wires import OHMS_PER_KM_BY_GAUGE

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "trade" / "cases" / "calculators.json").read_text("utf-8")
)
STATIC = Path(__file__).parents[2] / "builder" / "web"


@pytest.fixture
def library() -> Library:
    """Return a library with nothing in it but a shop."""
    return Library(Shop(Text("A shop"), Text("https://shop.example/"), 100, Text("EUR")))


def test_every_form_has_good_and_bad_input_in_the_table() -> None:
    """The table of cases leaves no form out, and none without input that makes no sense."""
    for form in CALCULATOR_FORMS:
        of_form = [case for case in CASES if case["calculator"] == form.id]
        assert any(case["lines"] for case in of_form), form.id
        assert any(case["mistakes"] for case in of_form), form.id


def test_every_calculator_and_lookup_has_its_form() -> None:
    """What the trade can calculate is on the page, once."""
    known = [one.id for one in CALCULATORS] + list(LOOKUPS)
    assert sorted(known) == sorted(form.id for form in CALCULATOR_FORMS)


@pytest.mark.parametrize("form", CALCULATOR_FORMS, ids=[form.id for form in CALCULATOR_FORMS])
def test_a_form_names_source_and_assumptions_and_its_example_works(form: Any) -> None:
    """You can check every number: its source is next to it."""
    assert form.source
    assert form.assumes
    answer = calculator_answer(form.id, dict(form.example))
    assert answer.lines
    assert not answer.mistakes


def test_without_scripts_the_examples_and_tables_are_there(library: Library) -> None:
    """The page as written has every example with its answer and every table; no form shows."""
    body = str(calculators_page(library).body)
    assert "both terminators present" in body
    assert "need JavaScript" in body
    assert len(re.findall(r"<form data-calculator=\S+ hidden", body)) == len(CALCULATOR_FORMS)
    for table in reference_tables().values():
        assert table.caption in body
        assert len(table.rows) >= 5


def test_the_decimal_mark_is_the_shop_s(library: Library) -> None:
    """A shop that writes a comma reads a comma."""
    comma = replace(library, shop=replace(library.shop, decimal_mark="comma"))
    assert "220.632 kPa" in str(calculators_page(library).body)
    assert "220,632 kPa" in str(calculators_page(comma).body)
    assert '"mark":"comma"' in calculator_files(comma)["trade-data.js"]


def test_the_script_holds_no_number_of_the_trade(library: Library) -> None:
    """Wire tables, battery tables, weights and factors reach the page as data alone."""
    numbers = {str(ohms / 1000) for ohms in OHMS_PER_KM_BY_GAUGE.values()}
    numbers |= {"11.89", "12.06", "1189/100", "0.45359237", "6894", "0.00393", "120", "8,7,6"}
    for name in ("exact", "expressions", "quantities", "calculator-answers", "calculators"):
        script = (STATIC / f"{name}.js").read_text("utf-8")
        assert [one for one in numbers if one in script] == []
