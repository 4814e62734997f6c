"""The edges of a tree: every way to leave a step that its row has, and those that an event took.

In: the tables, a tree; an event with the states around it. Out: `Edge`s.
"""

from collections.abc import Iterator
from typing import NamedTuple

from builder.walk.event_files import event_row
from builder.walk.events import Answer, Event, Fill
from builder.walk.job_state import JobState
from builder.walk.tree_rows import WalkStepRow
from builder.walk.walk_tables import PROCEDURES, WalkTables


class Edge(NamedTuple):
    """A way to leave a step: `result 0`, `stated 0`, `word good`, `test 1 failed`, `spent`."""

    inside: str
    step: str
    way: str


def edges_of(tables: WalkTables, tree: str) -> set[Edge]:
    """Return all edges of a tree and of the procedures that it runs."""
    waiting, seen, edges = [tree], {tree}, set[Edge]()
    while waiting:
        inside = waiting.pop()
        for step, row in tables[inside]["steps"].items():
            edges |= {Edge(inside, step, way) for way in _ways_of(row)}
            runs = [one["by"] for one in (row, *row.get("verify", ())) if "by" in one]
            names = {PROCEDURES + by["procedure"] for by in runs} - seen
            waiting += names
            seen |= names
    return edges


def _ways_of(row: WalkStepRow) -> Iterator[str]:
    """Yield the ways to leave a step that its row has."""
    kind, results = row["kind"], row.get("results", ())
    if kind in ("check", "action"):
        yield from ("cannot test", "none of these")
    if kind in ("action", "fix"):
        yield "done"
    if "by" in row:
        yield "run"
    for at, result in enumerate(results):
        yield f"word {result['text']}" if "by" in row else f"result {at}"
        if "by" in row or row["readings"]:
            yield f"stated {at}"
    for at, _ in enumerate(row.get("verify", ())):
        yield from (f"test {at} passed", f"test {at} failed")
    if "spent" in row:
        yield "spent"


def edges_taken(
    tables: WalkTables, before: JobState, event: Event, after: JobState
) -> Iterator[Edge]:
    """Yield the edges that an event took: those of its step, of callers, of steps passed."""
    if not before.frames:
        return
    frame = before.frames[-1]
    yield Edge(frame.inside, frame.step, _way(event))
    for entry in after.steps[len(before.steps) :]:
        row = tables[entry.inside]["steps"][entry.step]
        if entry.kind == "verify":
            yield Edge(entry.inside, entry.step, f"test {before.verifying} {entry.result}")
        elif (entry.inside, entry.step) != (frame.inside, frame.step) or "by" in row:
            is_word = any(one["text"] == entry.result for one in row["results"])
            way = f"word {entry.result}" if is_word else entry.result
            yield Edge(entry.inside, entry.step, way)
    for place in set(after.passed) - set(before.passed):
        inside, _, step = place.rpartition("#")
        yield Edge(inside, step, "spent")


def _way(event: Event) -> str:
    match event:
        case Answer(result=result, stated=stated):
            return f"{'stated' if stated else 'result'} {result}"
        case Fill(name=name, value=value):
            return f"fill {name}: {value}"
        case _:
            return str(event_row(event)["event"]).replace("_", " ")
