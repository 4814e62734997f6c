"""A tree that leads back from hundreds of steps costs seconds, not minutes, and little memory."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

import builder
from builder.reader.sizes import MOST_CHANCES

REPO = Path(builder.__file__).parents[1]  # where subprocesses find our code
STEPS = 400
CPU_SECONDS = 60  # an order of magnitude more than it takes
BYTES = 1024**3  # of addresses; the program and its libraries take half of it
MINUTES = f"""
import resource, sys
resource.setrlimit(resource.RLIMIT_CPU, ({CPU_SECONDS}, {CPU_SECONDS}))
resource.setrlimit(resource.RLIMIT_AS, ({BYTES}, {BYTES}))
from builder.plan.minutes import tree_minutes
from builder.reader.source import Source
from builder.reader.trees import tree_from
tree, findings = tree_from(Source("trees/a/a.yml", sys.stdin.read(), ""))
assert tree and not tree.broken, findings
minutes = tree_minutes(tree)
assert 0 < minutes.shortest <= minutes.expected
print("done")
"""
HEAD = """
format: 2
title: A
status: draft
symptom: {words: [a]}
steps:
"""
STEP = """
  s{n}:
    check: Look at {n}
    minutes: 2
    at_most: {most}
    spent: ask
    results:
      - {{result: good, branch: {after}}}
      - {{result: bad, branch: fix}}
"""
ENDS = """
  fix: {fix: Repair it, cause: It broke, weight: 1, verify: [it works]}
  end: {stop: Nothing here, kind: foreman}
  ask: {stop: Ask, kind: foreman}
"""


def tree_text(back: list[int], most: int, chance: str = "") -> str:
    """Write a chain of checks, each with results that lead so many steps back."""
    parts = [HEAD]
    for n in range(STEPS):
        after = f"s{n + 1}" if n + 1 < STEPS else "end"
        parts.append(STEP.format(n=n, most=most, after=after))
        share = f", chance: {chance}" if chance and n < MOST_CHANCES // len(back) else ""
        parts += (f"      - {{result: again {number}, branch: s{max(0, n - steps)}{share}}}\n"
                  for number, steps in enumerate(back))  # fmt: skip
    return "".join([*parts, ENDS])


@pytest.mark.parametrize(
    "text",
    [
        tree_text([1], 3),
        tree_text([STEPS], 3),
        tree_text([1, 8, 15], 3, "0.1"),
        tree_text([STEPS], 20, "0.217"),
        tree_text([1, 200], 14, "0.217"),
        tree_text([1 + 40 * n for n in range(9)], 2, "0.05"),
    ],
)
def test_hundreds_of_ways_back_are_counted_in_bounded_time_and_memory(text: str) -> None:
    """Short and long ways, one and nine from each step, with few and with many tries."""
    run = subprocess.run(
        [sys.executable, "-c", MINUTES],
        input=text, cwd=REPO, capture_output=True, text=True, timeout=600, check=False,
        env=os.environ | {"OPENBLAS_NUM_THREADS": "1"},
    )  # fmt: skip
    assert run.stdout == "done\n", run.stderr
