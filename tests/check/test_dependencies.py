"""What a tree's findings depend on beside its own file, hashed."""

import os
import subprocess
import sys

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
