"""The page's reducer and Python's agree: screens, refusals and records of random walks.

`WALKS=10000 python -m pytest tests/walk/test_page_walk.py` runs as many walks as named.
"""

import json
import os
import re
from collections.abc import Iterator
from random import Random
from typing import TYPE_CHECKING, Any

import pytest

from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages.calculators import calculator_files
from builder.walk.walk_tables import WalkTables
from builder.web import WEB
from tests.walk.random_walks import random_walk

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

WALKS = int(os.environ.get("WALKS", "150"))
AT_ONCE = 50
SCRIPTS = (
    "exact.js", "quantities.js", "follow.js", "walk-vehicle.js", "walk-told.js",
    "walk-targets.js", "walk-answers.js", "walk-reduce.js", "walk-record.js",
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


@pytest.fixture(scope="module")
def page(
    browser: "Browser", tables: WalkTables, shop: tuple[Library, list[Tree]]
) -> Iterator["Page"]:
    """Open an empty page with the scripts of the walk and the tables."""
    context = browser.new_context()
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.add_script_tag(content=calculator_files(shop[0])["trade-data.js"])
    for name in SCRIPTS:
        page.add_script_tag(content=(WEB / name).read_text("utf-8"))
    page.evaluate(
        "(both) => { globalThis.tables = both; }",
        {"shop": tables.shop, "trees": dict(tables.trees)},
    )
    assert not troubles
    yield page
    context.close()


def test_the_page_walks_like_python(page: "Page", tables: WalkTables) -> None:
    """After every event of a random walk both show the same, and both write the same record."""
    trees = list(tables.trees)
    for first in range(0, WALKS, AT_ONCE):
        text = json.dumps(
            [
                random_walk(tables, trees[seed % len(trees)], Random(seed))
                for seed in range(first, min(first + AT_ONCE, WALKS))
            ]
        )
        for walk, played in zip(
            json.loads(text), json.loads(page.evaluate(PLAY, text)), strict=True
        ):
            compare(walk, played)


def compare(walk: dict[str, Any], played: dict[str, Any]) -> None:
    """Fail at the first event where the two differ."""
    for number, one in enumerate(walk["tries"]):
        # What only sounds similar is guessed in Python alone.
        refused = re.sub(r" did you mean [^;]*;", "", one["refused"])
        assert played["refusals"][number] == refused, one["event"]
        assert played["screens"][number] == walk["screens"][number], one["event"]
    assert played["record"] == walk["record"]
