"""The bench page: sums of the trade, typed in and worked out on the page.

In: the library, of which only the shop's decimal mark matters. Out: the `Page`, and the text of the
two files with the trade's tables that its scripts need. Each form shows an example that is worked
out here; the script in the page gets the same answer, or a test fails.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.model.library import Library
from builder.model.shop import Shop
from builder.pages import words
from builder.pages.bench_forms import FORMS, Form
from builder.pages.bench_tables import Table, tables
from builder.pages.page import Page
from builder.pages.render import render
from builder.trade.as_data import bench_data, units_data
from builder.trade.look_ups import answer
from builder.trade.quantities import Quantity, typed_quantity, written
from builder.trade.sums import SUMS, Line
from builder.trade.units import UNITS, same_kind

PATH = "bench"
SCRIPTS = (
    "trade-data.js", "bench-data.js", "exact.js", "quantities.js", "answers.js", "dom.js",
    "bench.js",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class FieldView:
    """One field as it is laid out."""

    name: str
    label: str
    units: tuple[tuple[str, str], ...] = ()  # symbol and sign, the wanted one first
    choices: tuple[str, ...] = ()
    digits: bool = False  # whether figures alone will do: then a phone shows its figures


@dataclass(frozen=True, slots=True)
class FormView:
    """One form as it is laid out."""

    form: Form
    fields: tuple[FieldView, ...]
    typed: str
    lines: tuple[tuple[str, str], ...]
    table: Table | None


def bench_page(library: Library) -> Page:
    """Write the page."""
    found = tables()
    views = [_view(form, found.get(form.id), library.shop) for form in FORMS]
    body = render("bench.html", PATH, forms=views)
    summary = "Bus resistance, voltage drop, battery, units, codes: typed in and worked out"
    return Page(PATH, "Bench sums", body, summary, SCRIPTS)


def data_files(library: Library) -> Mapping[str, str]:
    """Write the trade's tables as scripts, which load from a folder (`file://`) too."""
    trade = {"mark": library.shop.decimal_mark, "units": units_data()}
    return {
        "trade-data.js": f"globalThis.baytreeTrade = {_json(trade)};\n",
        "bench-data.js": f"baytreeTrade.bench = {_json(bench_data())};\n",
    }


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def _view(form: Form, table: Table | None, shop: Shop) -> FormView:
    fields = tuple(_fields(form))
    lines = answer(form.id, dict(form.example)).lines
    shown = tuple((line.label, line_text(line, shop)) for line in lines)
    return FormView(form, fields, words.joined(_typed(form, fields)), shown, table)


def _typed(form: Form, fields: tuple[FieldView, ...]) -> Iterator[str]:
    """Yield what the example has in its fields; a class that is the usual one goes without."""
    example = dict(form.example)
    for field in fields:
        if field.name not in example or field.choices[:1] == (example[field.name],):
            continue
        value = example[field.name]
        if field.units:
            found = typed_quantity(value, field.units[0][0])
            value = written(found) if isinstance(found, Quantity) else value
        yield f"{words.first_small(field.label)} {value}"


def line_text(line: Line, shop: Shop) -> str:
    """Write a number with the shop's decimal mark."""
    comma = shop.decimal_mark == "comma" and line.exact
    return line.text.replace(".", ",") if comma else line.text


def _fields(form: Form) -> Iterator[FieldView]:
    for of in SUMS:
        for field in of.fields if of.id == form.id else ():
            digits = field.low is not None and field.low >= 0
            yield FieldView(
                field.name, field.label, _units(field.unit), tuple(field.choices), digits
            )
    if form.unit:
        yield FieldView("ohms", "Resistance", _units(form.unit), digits=True)
    for text in form.fields:
        yield FieldView(text.name, text.label, choices=text.choices)


def _units(wanted: str) -> tuple[tuple[str, str], ...]:
    """Return every unit of a kind, the wanted one first."""
    kind = [one for one in UNITS.values() if wanted and same_kind(one.symbol, wanted)]
    ordered = sorted(kind, key=lambda one: one.symbol != wanted)
    return tuple((one.symbol, one.sign) for one in ordered)
