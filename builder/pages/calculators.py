"""The calculators page: arithmetic and lookups of the trade, calculated in the browser.

In: the library, for the shop's decimal mark. Out: the `Page`, and two scripts that hold the tables
of `trade/`. Each form shows an example that is calculated here; a test fails where the browser's
script gets a different answer.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model.library import Library
from builder.model.shop import Shop
from builder.pages.calculator_forms import CALCULATOR_FORMS, CalculatorForm
from builder.pages.calculator_tables import ReferenceTable, reference_tables
from builder.pages.page import Page
from builder.pages.render import render
from builder.trade.answers import AnswerLine
from builder.trade.as_data import calculator_data, units_data
from builder.trade.calculators import CALCULATORS
from builder.trade.lookups import calculator_answer
from builder.trade.quantities import Quantity, format_quantity, typed_quantity
from builder.trade.units import UNITS, same_kind
from builder.wording.sentences import joined, uncapitalized

CALCULATORS_PATH = "calculators"
CALCULATOR_SCRIPTS = (
    "trade-data.js",
    "calculator-data.js",
    "exact.js",
    "expressions.js",
    "quantities.js",
    "calculator-answers.js",
    "dom.js",
    "calculators.js",
)


@dataclass(frozen=True, slots=True)
class FieldLayout:
    """One field, ready to be laid out."""

    name: str
    label: str
    units: tuple[tuple[str, str], ...] = ()  # symbol and label, the usual unit first
    choices: tuple[str, ...] = ()
    digits: bool = False  # takes numbers only: a phone shows its number keys


@dataclass(frozen=True, slots=True)
class FormLayout:
    """One form, ready to be laid out."""

    form: CalculatorForm
    fields: tuple[FieldLayout, ...]
    entered: str  # the example, as text
    lines: tuple[tuple[str, str], ...]
    table: ReferenceTable | None


def calculators_page(library: Library) -> Page:
    """Write the page."""
    by_form = reference_tables()
    layouts = [_layout(form, by_form.get(form.id), library.shop) for form in CALCULATOR_FORMS]
    body = render("calculators.html", CALCULATORS_PATH, forms=layouts)
    summary = "Bus resistance, voltage drop, battery, units, DTCs, VIN"
    return Page(CALCULATORS_PATH, "Calculators", body, summary, CALCULATOR_SCRIPTS)


def calculator_files(library: Library) -> Mapping[str, str]:
    """Return the tables of `trade/` as scripts, by file name; scripts load from `file://` too."""
    trade = {"mark": library.shop.decimal_mark, "units": units_data()}
    return {
        "trade-data.js": f"globalThis.baytreeTrade = {_json(trade)};\n",
        "calculator-data.js": f"baytreeTrade.calculators = {_json(calculator_data())};\n",
    }


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def _layout(form: CalculatorForm, table: ReferenceTable | None, shop: Shop) -> FormLayout:
    fields = tuple(_fields(form))
    lines = calculator_answer(form.id, dict(form.example)).lines
    answers = tuple((line.label, answer_text(line, shop)) for line in lines)
    return FormLayout(form, fields, joined(_entered(form, fields)), answers, table)


def _entered(form: CalculatorForm, fields: tuple[FieldLayout, ...]) -> Iterator[str]:
    """Yield the example's entries with their labels; the usual choice of a list is left out."""
    example = dict(form.example)
    for field in fields:
        if field.name not in example or field.choices[:1] == (example[field.name],):
            continue
        value = example[field.name]
        if field.units:
            quantity = typed_quantity(value, field.units[0][0])
            value = format_quantity(quantity) if isinstance(quantity, Quantity) else value
        yield f"{uncapitalized(field.label)} {value}"


def answer_text(line: AnswerLine, shop: Shop) -> str:
    """Write a number with the shop's decimal mark."""
    comma = shop.decimal_mark == "comma" and line.exact
    return line.text.replace(".", ",") if comma else line.text


def _fields(form: CalculatorForm) -> Iterator[FieldLayout]:
    for calculator in CALCULATORS:
        for field in calculator.fields if calculator.id == form.id else ():
            digits = field.low is not None and field.low >= 0
            yield FieldLayout(
                field.name, field.label, _units(field.unit), tuple(field.choices), digits
            )
    if form.unit:
        yield FieldLayout("ohms", "Resistance", _units(form.unit), digits=True)
    for lookup in form.fields:
        yield FieldLayout(lookup.name, lookup.label, choices=lookup.choices)


def _units(usual: str) -> tuple[tuple[str, str], ...]:
    """Return every unit of the same kind, the usual one first."""
    units = [unit for unit in UNITS.values() if usual and same_kind(unit.symbol, usual)]
    ordered = sorted(units, key=lambda unit: unit.symbol != usual)
    return tuple((unit.symbol, unit.label) for unit in ordered)
