"""The page's reducer, as published, and Python's agree: screens, refusals and records of walks.

`WALKS=10000 python -m pytest tests/walk/test_page_walk.py` runs as many walks as named.
"""

import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import TYPE_CHECKING, Any

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.reader.trees import read_tree
from builder.site.assets import fixed_files
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.walk_tables import WalkTables
from tests.walk.random_walks import random_walk

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

WALKS = int(os.environ.get("WALKS", "100"))
AT_ONCE = 50
SCRIPTS = (
    "exact.js", "expressions.js", "quantities.js", "follow.js", "walk-vehicle.js",
    "walk-changes.js", "walk-told.js", "walk-specs.js", "walk-targets.js", "walk-answers.js",
    "walk-measured.js", "walk-unfit.js", "walk-reduce.js", "walk-fill.js", "walk-correct.js",
    "walk-record.js",
)  # fmt: skip
PLAY = """
(text) => JSON.stringify(JSON.parse(text).map(({ tries }) => {
  const { BEGINNING, reduce } = baytreeReduce, { screen, recordOf } = baytreeRecord;
  let state = BEGINNING;
  const refusals = [], screens = [];
  for (const { event } of tries) {
    const following = reduce(tables, state, event);
    refusals.push(following.refused || "");
    state = following.refused ? state : following;
    screens.push(screen(tables, state));
  }
  return { refusals, screens, record: recordOf(state) };
}))
"""


@pytest.fixture(scope="module", params=["shop", "samples"])
def both(request: pytest.FixtureRequest) -> tuple[Library, WalkTables]:
    """Return the knowledge of a shop and the tables of its trees."""
    shop = Path(__file__).parents[1] / request.param
    library, _ = read_library(shop)
    read = (read_tree(shop, shop / entry.file)[0] for entry in library.trees.values())
    trees = {tree.id: tree_table(tree, library) for tree in read if tree and not tree.broken}
    return library, walk_tables(library, trees)


@pytest.fixture
def page(browser: "Browser", both: tuple[Library, WalkTables]) -> Iterator["Page"]:
    """Open an empty page with the scripts of the walk and the tables."""
    library, tables = both
    context = browser.new_context()
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.add_script_tag(content=calculator_files(library)["trade-data.js"])
    for name in SCRIPTS:
        page.add_script_tag(content=fixed_files()[f"assets/{name}"].decode())
    text = json.dumps({"shop": tables.shop, "trees": dict(tables.trees)})
    page.evaluate("(text) => { globalThis.tables = JSON.parse(text); }", text)
    assert not troubles
    yield page
    context.close()


def test_the_page_walks_like_python(page: "Page", both: tuple[Library, WalkTables]) -> None:
    """After every event of a random walk both show the same, and both write the same record."""
    _, tables = both
    trees = list(tables.trees)
    for first in range(0, WALKS, AT_ONCE):
        seeds = range(first, min(first + AT_ONCE, WALKS))
        walks = [random_walk(tables, trees[seed % len(trees)], Random(seed)) for seed in seeds]
        text = json.dumps(walks)
        played = json.loads(page.evaluate(PLAY, text))
        for walk, one in zip(json.loads(text), played, strict=True):
            compare(walk, one)


def compare(walk: dict[str, Any], played: dict[str, Any]) -> None:
    """Fail at the first event where the two differ."""
    for number, one in enumerate(walk["tries"]):
        # What only sounds similar is guessed in Python alone.
        refused = re.sub(r" did you mean [^;]*;", "", one["refused"])
        assert played["refusals"][number] == refused, one["event"]
        assert played["screens"][number] == walk["screens"][number], one["event"]
    assert played["record"] == walk["record"]
