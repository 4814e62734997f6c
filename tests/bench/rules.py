"""The rules against reading: `rules.py [SHOP]`, the demo shop unless another is named.

In: a shop. Out: figures on the screen: the time of all rules over each tree beside the time that
PyYAML with its C parser takes to compose the same files, which is the least that any checker of
YAML has to spend; and the time to prove 1,500 ranges over seven readings beside the same peer on a
file of 1,500 lines with seven numbers each. Run by hand, on a quiet machine.
"""

import random
import sys
import time
from collections.abc import Callable, Iterable
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import TypeVar

import yaml

from builder.check.unchecked_library import read_library
from builder.graph.reading_coverage import overlaps, uncovered
from builder.model.ranges import Box, Cut, Range
from builder.reader.trees import read_tree, tree_files
from builder.rules.shared.judge import judge, judge_library

ROOT = Path(__file__).parents[2]
TODAY = date(2026, 10, 1)
Item = TypeVar("Item")


def best(work: Callable[[], object], times: int = 5) -> float:
    """Return the shortest of a few runs, in seconds of this process."""
    taken = []
    for _ in range(times):
        start = time.process_time()
        work()
        taken.append(time.process_time() - start)
    return min(taken)


def each(items: Iterable[Item], work: Callable[[Item], object]) -> None:
    """Do it for each and keep nothing, as the check does."""
    for item in items:
        work(item)


def of_trees(shop: Path) -> None:
    """Print milliseconds a tree, and the ratio to the peer."""
    library, _ = read_library(shop)
    files = tree_files(shop)
    trees = [tree for path in files if (tree := read_tree(shop, path)[0])]
    texts = [path.read_text("utf-8") for path in files]
    rules = best(lambda: each(trees, lambda tree: judge(tree, library))) / len(trees)
    peer = best(lambda: each(texts, lambda text: yaml.compose(text, yaml.CBaseLoader))) / len(trees)
    whole = best(lambda: judge_library(library, TODAY))
    size = sum(map(len, texts)) / len(texts) / 1024
    steps = sum(len(tree.steps) for tree in trees) / len(trees)
    print(f"{len(trees)} trees of {steps:.0f} steps and {size:.1f} KiB on average")
    print(f"  all rules     {rules * 1000:6.2f} ms a tree")
    print(f"  PyYAML, in C  {peer * 1000:6.2f} ms a tree: the rules take {rules / peer:.1f} of it")
    print(f"  the library   {whole * 1000:6.1f} ms in all")


def cut_up(count: int, dimensions: int) -> tuple[Box, list[Box]]:
    """Cut a box in two at random until there are enough."""
    seeded = random.Random(1)
    boxes = [[(0, 1000)] * dimensions]
    while len(boxes) < count:
        box = boxes[seeded.randrange(len(boxes))]
        axis = seeded.randrange(dimensions)
        low, high = box[axis]
        if high - low > 1:
            cut = seeded.randrange(low + 1, high)
            boxes.append([*box[:axis], (cut, high), *box[axis + 1 :]])
            box[axis] = (low, cut)
    seeded.shuffle(boxes)
    as_ranges = [
        tuple(Range(Cut(Decimal(a), False), Cut(Decimal(b), False)) for a, b in box)
        for box in boxes
    ]
    whole = Range(Cut(Decimal(0), False), Cut(Decimal(1000), False))
    return (whole,) * dimensions, as_ranges


def of_a_large_table() -> None:
    """Print the time to prove a table of 1,500 ranges over seven readings."""
    domain, boxes = cut_up(1500, 7)
    gaps = best(lambda: uncovered(domain, boxes), 3)
    shared = best(lambda: list(overlaps(domain, boxes)), 3)
    text = "\n".join("- [" + ", ".join(f"{b.low.value}" for b in box) + "]" for box in boxes)
    peer = best(lambda: yaml.compose(text, yaml.CBaseLoader), 3)
    print(f"1,500 ranges over 7 readings: gaps {gaps:.2f} s, overlaps {shared:.2f} s, "
          f"PyYAML on as many numbers {peer:.3f} s")  # fmt: skip


if __name__ == "__main__":
    of_trees(Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT)
    of_a_large_table()
