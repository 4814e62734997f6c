"""The bench page: its forms, examples and tables, and that no figure is typed twice."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.text import Text
from builder.pages.bench import bench_page, data_files
from builder.pages.bench_forms import FORMS
from builder.pages.bench_tables import tables
from builder.trade.look_ups import LOOK_UPS, answer
from builder.trade.sums import SUMS
from builder.trade.wires import OHMS_PER_KM_BY_GAUGE

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "trade" / "cases" / "bench.json").read_text("utf-8")
)
STATIC = Path(__file__).parents[2] / "builder" / "web"


@pytest.fixture
def library() -> Library:
    """Return a library with nothing in it but a shop."""
    return Library(Shop(Text("A shop"), Text("https://shop.example/"), 100, Text("EUR")))


def test_every_form_has_good_and_bad_input_in_the_table() -> None:
    """The table of cases leaves no form out, and none without input that makes no sense."""
    for form in FORMS:
        of_form = [case for case in CASES if case["sum"] == form.id]
        assert any(case["lines"] for case in of_form), form.id
        assert any(case["mistakes"] for case in of_form), form.id


def test_every_sum_and_look_up_has_its_form() -> None:
    """What the trade can do at the bench stands on the page, once."""
    known = [one.id for one in SUMS] + list(LOOK_UPS)
    assert sorted(known) == sorted(form.id for form in FORMS)


@pytest.mark.parametrize("form", FORMS, ids=[form.id for form in FORMS])
def test_a_form_names_source_and_assumptions_and_its_example_works(form: Any) -> None:
    """Nobody has to believe a figure: where it comes from stands beside it."""
    assert form.source
    assert form.assumes
    found = answer(form.id, dict(form.example))
    assert found.lines
    assert not found.mistakes


def test_without_scripts_the_examples_and_tables_are_there(library: Library) -> None:
    """The page as written has every example with its answer and every table; no form shows."""
    body = str(bench_page(library).body)
    assert "both terminators present" in body
    assert "switched off here" in body
    assert len(re.findall(r"<form data-sum=\S+ hidden", body)) == len(FORMS)
    for table in tables().values():
        assert table.caption in body
        assert len(table.rows) >= 5


def test_the_decimal_mark_is_the_shop_s(library: Library) -> None:
    """A shop that writes a comma reads a comma."""
    comma = replace(library, shop=replace(library.shop, decimal_mark="comma"))
    assert "220.632 kPa" in str(bench_page(library).body)
    assert "220,632 kPa" in str(bench_page(comma).body)
    assert '"mark":"comma"' in data_files(comma)["trade-data.js"]


def test_the_script_holds_no_figure_of_the_trade(library: Library) -> None:
    """Wire tables, battery tables, weights and factors reach the page as data alone."""
    told = {str(ohms / 1000) for ohms in OHMS_PER_KM_BY_GAUGE.values()}
    told |= {"11.89", "12.06", "1189/100", "0.45359237", "6894", "0.00393", "120", "8,7,6"}
    for name in ("exact.js", "quantities.js", "answers.js", "bench.js"):
        script = (STATIC / name).read_text("utf-8")
        assert [figure for figure in told if figure in script] == []
