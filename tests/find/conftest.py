"""A small table, the tests' shop, and the page's search in a browser."""

import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Page

from builder.check.unjudged_library import read_library
from builder.find.rows import (
    CodeRow,
    LampRow,
    NamedRow,
    Table,
    TreeRow,
    VehicleRow,
    WordRow,
)
from builder.find.rows import table as table_of
from builder.model.library import Library

HERE = Path(__file__).parent
SHOP = HERE.parent / "shop"
STATIC = HERE.parents[1] / "builder" / "web"

Rank = Callable[[Table, list[str]], list[dict[str, Any]]]


@pytest.fixture(scope="session")
def small() -> Table:
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
            said.get("draft", 0),
        )

    return Table(
        systems=tuple(NamedRow(*pair) for pair in shop["systems"].items()),
        lamps=tuple(LampRow(id_, *said) for id_, said in shop["lamps"].items()),
        vehicles=tuple(VehicleRow(*row) for row in shop["vehicles"]),
        same=tuple(WordRow(phrase, tuple(terms)) for phrase, terms in shop["same words"].items()),
        slang=tuple(WordRow(phrase, tuple(terms)) for phrase, terms in shop["slang"].items()),
        codes=tuple(CodeRow(*pair) for pair in shop["codes"].items()),
        trees=tuple(tree(id_, said) for id_, said in shop["trees"].items()),
        how_tos=tuple(NamedRow(*pair) for pair in shop["how-tos"].items()),
        everyday="good things to say again went horse",
    )


@pytest.fixture(scope="session")
def shop() -> Library:
    """Return the library of the tests' shop."""
    library, _ = read_library(SHOP)
    return library


@pytest.fixture(scope="session")
def shop_table(shop: Library) -> Table:
    """Return the rows of the tests' shop."""
    return table_of(shop)


@pytest.fixture(scope="session")
def page_words(browser: Browser) -> Iterator[Callable[[str, Any], Any]]:
    """Return a function that runs a piece of script beside the page's search."""
    page: Page = browser.new_page()
    for script in ("search-words.js", "search-index.js", "search-rank.js"):
        page.add_script_tag(path=STATIC / script)
    yield page.evaluate
    page.close()


@pytest.fixture(scope="session")
def page_rank(page_words: Callable[[str, Any], Any]) -> Rank:
    """Return the page's ranking: rows and queries in, answers out."""

    def rank(table: Table, queries: list[str]) -> list[dict[str, Any]]:
        answers = page_words(
            "([rows, queries]) => { const index = baytreeFind.index(rows);"
            " return queries.map((query) => baytreeFind.rank(index, query)); }",
            [json.loads(json.dumps(table._asdict())), queries],
        )
        assert isinstance(answers, list)
        return answers

    return rank
