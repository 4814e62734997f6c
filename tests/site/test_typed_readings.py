"""Readings as the page takes them: the outcomes of Python, digit by digit."""

import json
import random
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from builder.check.unchecked_library import read_library
from builder.reader.trees import read_tree
from builder.walk.follow import follow
from builder.walk.rows import WalkTable
from builder.walk.table import walk_table

from .conftest import SHOP
from .walker import opened_page

TRADE = Path(__file__).parents[1] / "trade" / "cases"
WALK = Path(__file__).parents[1] / "walk" / "cases"
CASES: list[dict[str, Any]] = json.loads((WALK / "follow.json").read_text("utf-8"))
OUTCOME = ("state", "fits", "reads_as", "values", "errors", "mistakes")
PLAY = """
([table, all]) => all.map(([step, typed]) => {
  const row = table.steps[step];
  const tools = row.tools.map((id) => table.tools[id]).filter(Boolean);
  return baytreeFollow.readAs(row, tools, typed);
})
"""


@pytest.fixture(scope="module")
def table(tmp_path_factory: pytest.TempPathFactory) -> WalkTable:
    """Return the table of a tree with a check of every kind, as a page gets it: through JSON."""
    folder = tmp_path_factory.mktemp("checks")
    file = folder / "trees" / "horn" / "checks.yml"
    file.parent.mkdir(parents=True)
    file.write_bytes((WALK / "checks.yml").read_bytes())
    library, _ = read_library(SHOP)
    tree, _ = read_tree(folder, file)
    assert tree
    table: WalkTable = json.loads(json.dumps(walk_table(tree, library)))
    return table


@pytest.fixture(scope="module")
def page(chromium: Browser, whole: Path) -> Iterator[Page]:
    """Open a page with the scripts of the walk."""
    with opened_page(chromium) as page:
        page.goto((whole / "trees/charging/battery-lamp.html").as_uri())
        for name in ("quantities", "follow", "expressions"):  # a step that needs them loads them
            page.add_script_tag(url=f"../../assets/{name}.js")
        yield page


def test_the_page_gives_the_outcomes_of_the_table(page: Page, table: WalkTable) -> None:
    """The script passes every case that Python passes."""
    asked = [[case["step"], case["typed"]] for case in CASES]
    for case, one in zip(CASES, page.evaluate(PLAY, [table, asked]), strict=True):
        assert one == {name: case[name] for name in OUTCOME}, case


def test_computed_readings_have_exact_digits(page: Page) -> None:
    """The script passes the cases of `trade/`: twelve digits, or nothing."""
    cases = json.loads((TRADE / "computed.json").read_text("utf-8"))
    outcomes = page.evaluate(
        """cases => cases.map(({ compiled, values }) => {
            const { read, rounded } = baytreeExact, { run } = baytreeExpressions;
            const exact = Object.entries(values).map(([name, text]) => [name, read(text)]);
            const value = run(compiled, Object.fromEntries(exact));
            return value && rounded(value);
        })""",
        cases,
    )
    assert outcomes == [case["result"] for case in cases]


def test_page_and_python_agree_on_random_readings(page: Page, table: WalkTable) -> None:
    """Random readings, near limits and in other units, have the same outcome."""
    chance = random.Random(7)
    asked = [drawn(chance, table) for _ in range(300)]
    for (step, typed), one in zip(asked, page.evaluate(PLAY, [table, asked]), strict=True):
        assert one == json.loads(json.dumps(asdict(follow(table, step, typed)))), (step, typed)


def drawn(chance: random.Random, walk: WalkTable) -> tuple[str, dict[str, str]]:
    """Draw a step and the entries in its fields."""
    step = chance.choice(sorted(walk["steps"]))
    row = walk["steps"][step]
    ends = [
        str(cut[0]) for one in row["results"] for side in one["ranges"].values() for cut in side
    ]
    numbers = [end for end in ends if end[-1].isdigit()] or ["1"]
    typed = dict.fromkeys(row.get("figure", ()), "1.2")
    for one in row["readings"]:
        low, high = max(float(one["low"]), 0), min(float(one["high"]), 200)
        figure = chance.choice([f"{chance.uniform(low, high):.2f}", chance.choice(numbers), "OL"])
        other = chance.choice(["", "", " mV", " V", " kohm", " psi", " °F"])
        typed[one["name"]] = chance.choice(one.get("phrases") or [figure + other])
    return step, typed
