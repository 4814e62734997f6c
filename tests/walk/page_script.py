"""The walk's scripts as they are published, and moves played in them as Python has played them.

In: a browser, the knowledge of a shop, its tables; moves, each an event at the state after an
earlier one. Out: a page with the scripts; a failed assertion at the first move that differs.
"""

import json
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

from builder.model.library import Library
from builder.pages.calculators import calculator_files
from builder.site.assets import fixed_files
from builder.walk.walk_tables import WalkTables

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

SCRIPTS = (
    "exact.js", "expressions.js", "quantities.js", "follow.js", "walk-vehicle.js",
    "walk-changes.js", "walk-told.js", "walk-specs.js", "walk-targets.js", "walk-answers.js",
    "walk-measured.js", "walk-unfit.js", "walk-reduce.js", "walk-fill.js", "walk-correct.js",
    "walk-record.js",
)  # fmt: skip
PLAY = """
(text) => {
  const { BEGINNING, reduce } = baytreeReduce, { screen, recordOf } = baytreeRecord, states = [];
  return JSON.stringify(JSON.parse(text).map(([begin, event, ends]) => {
    const before = states[begin] || BEGINNING, after = reduce(tables, before, event);
    const state = after.refused ? before : after;
    states.push(state);
    return [after.refused || "", screen(tables, state), ends ? recordOf(state) : null];
  }));
}
"""


@dataclass(frozen=True, slots=True)
class Move:
    """An event at the state after an earlier move, and what came of it."""

    begin: int  # the number of that move; -1: before the start
    event: dict[str, Any]
    refused: str
    screen: dict[str, Any]
    record: dict[str, Any] | None = None  # None: not compared


@contextmanager
def opened_script(browser: "Browser", library: Library, tables: WalkTables) -> Iterator["Page"]:
    """Open an empty page with the scripts of the walk and the tables."""
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


def play(page: "Page", moves: Sequence[Move]) -> None:
    """Play moves, and fail at the first that the script answers with something else."""
    rows = json.loads(json.dumps([asdict(one) for one in moves]))
    events = [(one["begin"], one["event"], one["record"] is not None) for one in rows]
    played = json.loads(page.evaluate(PLAY, json.dumps(events)))
    for one, (refused, screen, record) in zip(rows, played, strict=True):
        # What only sounds similar is guessed in Python alone.
        assert refused == re.sub(r" did you mean [^;]*;", "", one["refused"]), one["event"]
        assert screen == one["screen"], one["event"]
        assert record == one["record"], one["event"]
