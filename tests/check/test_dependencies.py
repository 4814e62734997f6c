"""What a tree's findings depend on beside its own file, hashed."""

import os
import subprocess
import sys
from types import SimpleNamespace

import pytest

from builder.check.dependencies import knowledge_digest
from builder.model.finding import Finding, Severity
from builder.model.text import Position

# Trees that lead to each other in a ring; one that the ring leads to, and so do others.
RING = """
from types import SimpleNamespace
from builder.check.dependencies import neighbor_digests
names = [f"charging/tree-{number}" for number in range(9)]
callers = {name: ((before, "step"),) for name, before in zip(names, names[-1:] + names)}
others = [f"fuel/tree-{number}" for number in range(4)]
callers["last"] = tuple((name, "step") for name in (names[0], *others))
shapes = {name: name for name in (*names, *others, "last")}
print(neighbor_digests(SimpleNamespace(callers=callers), shapes, [*names, "last"]))
"""


def test_the_hash_of_a_ring_of_trees_is_the_same_in_the_next_run() -> None:
    """Sets have another order in every run of Python; what is remembered must not follow it."""
    outputs = {
        subprocess.run(
            [sys.executable, "-c", RING],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            timeout=120,
            check=True,
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(outputs) == 1


@pytest.mark.parametrize(("line", "words", "same"), [(7, "low", True), (2, "high", False)])
def test_a_line_that_moved_is_no_change(line: int, words: str, same: bool) -> None:
    """Whatever has a position is hashed by its words alone."""

    def hashed(line: int, words: str) -> str:
        entry = Finding("limits", Severity.ERROR, Position("kb/tools.yml", line, 1, line, 9), words)
        library = SimpleNamespace(shop=(), tools={"meter": entry})
        return knowledge_digest(library)([("tools", "meter")])  # type: ignore[arg-type]

    assert (hashed(line, words) == hashed(2, "low")) is same
