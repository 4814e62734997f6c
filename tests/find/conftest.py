"""A small table, the tests' shop, and the page's search in a browser."""

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Page

from builder.check.unchecked_library import read_library
from builder.find.page_data import search_data
from builder.find.search_table import (
    CodeRow,
    LampRow,
    NamedRow,
    SearchTable,
    TreeRow,
    VehicleRow,
    WordRow,
    search_table,
)
from builder.find.symptom_index import SymptomIndex, build_symptom_index
from builder.model.library import Library

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"
STATIC = HERE.parents[1] / "builder" / "web"

SCRIPTS = ("words", "index", "spelling", "query", "safety", "coverage", "rank")

Answering = Callable[[SearchTable, list[str]], list[dict[str, Any]]]


@pytest.fixture(scope="session")
def small() -> SearchTable:
    """Return the rows of small.yml."""
    shop = yaml.safe_load((HERE / "small.yml").read_text())
    systems, lamps = list(shop["systems"]), list(shop["lamps"])

    def tree(id_: str, said: dict[str, Any]) -> TreeRow:
        return TreeRow(
            id_,
            said["title"],
            systems.index(said["system"]),
            tuple(lamps.index(lamp) for lamp in said.get("lamps", ())),
            tuple(said.get("codes", ())),
            tuple(said["words"]),
            tuple(said.get("vehicles", ())),
            bool(said.get("draft")),
        )

    return SearchTable(
        systems=tuple(NamedRow(*pair) for pair in shop["systems"].items()),
        lamps=tuple(LampRow(id_, *said) for id_, said in shop["lamps"].items()),
        vehicles=tuple(VehicleRow(*row) for row in shop["vehicles"]),
        synonyms=tuple(
            WordRow(phrase, tuple(terms)) for phrase, terms in shop["same words"].items()
        ),
        slang=tuple(WordRow(phrase, tuple(terms)) for phrase, terms in shop["slang"].items()),
        codes=tuple(CodeRow(*pair) for pair in shop["codes"].items()),
        trees=tuple(tree(id_, said) for id_, said in shop["trees"].items()),
        articles=tuple(NamedRow(*pair) for pair in shop["how-tos"].items()),
        everyday=frozenset({"good", "things", "to", "say", "again", "went", "horse", "worse"}),
    )


@pytest.fixture(scope="session")
def small_index(small: SearchTable) -> SymptomIndex:
    """Return the index of those rows."""
    return build_symptom_index(small)


@pytest.fixture(scope="session")
def shop() -> Library:
    """Return the library of the tests' shop."""
    library, _ = read_library(SHOP)
    return library


@pytest.fixture(scope="session")
def shop_table(shop: Library) -> SearchTable:
    """Return the rows of the tests' shop."""
    return search_table(shop)


@pytest.fixture(scope="session")
def page_words(browser: Browser, small: SearchTable) -> Iterator[Callable[[str, Any], Any]]:
    """Return a function that runs a piece of script beside the page's search."""
    page: Page = browser.new_page()
    page.evaluate("(data) => { globalThis.baytreeSearchData = data; }", as_sent(small))
    for script in SCRIPTS:
        page.add_script_tag(path=STATIC / f"search-{script}.js")
    yield page.evaluate
    page.close()


@pytest.fixture(scope="session")
def page_answers(page_words: Callable[[str, Any], Any]) -> Answering:
    """Return the page's search: rows and queries in, answers out."""

    def answer(table: SearchTable, queries: list[str]) -> list[dict[str, Any]]:
        answers = page_words(
            "([data, queries]) => { const index = baytreeSearch.unpackIndex(data);"
            " return queries.map((query) => baytreeSearch.answerQuery(index, query)); }",
            [as_sent(table), queries],
        )
        assert isinstance(answers, list)
        return answers

    return answer


def as_sent(table: SearchTable) -> Any:
    """Return the data of the page as a browser reads them."""
    return json.loads(json.dumps(search_data(table)))
