"""What a tree's findings depend on beside its own file, hashed."""

import os
import subprocess
import sys

# Trees that lead to each other in a ring, and one that the ring leads to.
RING = """
from types import SimpleNamespace
from builder.check.dependencies import neighbor_digests
names = [f"charging/tree-{number}" for number in range(9)]
callers = {name: ((before, "step"),) for name, before in zip(names, names[-1:] + names)}
library = SimpleNamespace(callers=callers | {"last": ((names[0], "step"),)})
print(neighbor_digests(library, dict.fromkeys([*names, "last"], "") | {n: n for n in names}, names))
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
