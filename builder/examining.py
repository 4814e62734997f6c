"""Trees read and judged each for itself, on as many cores as there are.

In: files of a shop and its knowledge. Out: what stands in each, and its findings as far as they do
not depend on other trees. A tree is read once, and dropped before the next.
"""

import gc
import os
from collections.abc import Iterable, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

from builder.memory import Findings
from builder.model.library import Library, Summary, summary_of
from builder.reader.trees import read_tree
from builder.rules.judge import judge

WORTH_IT = 40  # trees; for fewer, starting another process takes longer than it saves
AT_ONCE = 16  # trees handed to a process at a time


@dataclass(frozen=True, slots=True)
class Examined:
    """A tree's file by itself; `alone` is None where it has not been judged."""

    summary: Summary | None
    mistakes: Findings
    alone: Findings | None = None


def examine_all(
    shop: Path, files: Sequence[Path], knowledge: Library, today: date
) -> Iterable[Examined]:
    """Examine files in their order."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    if len(files) < WORTH_IT or (cores or 1) < 2:
        return [examine(shop, knowledge, today, path) for path in files]
    given = (shop, knowledge, today)
    with ProcessPoolExecutor(cores, initializer=_begin, initargs=given) as pool:
        return list(pool.map(_examine_there, files, chunksize=AT_ONCE))


def examine(shop: Path, knowledge: Library, today: date, path: Path) -> Examined:
    """Read one tree, judge it as if it were alone, and keep what the others need to know."""
    tree, mistakes = read_tree(shop, path)
    if tree is None:
        return Examined(None, mistakes)
    return Examined(summary_of(tree), mistakes, judge(tree, knowledge, today))


_there: list[partial[Examined]] = []  # what each process needs for every tree, handed over once


def _begin(shop: Path, knowledge: Library, today: date) -> None:
    gc.set_threshold(100_000)  # values of a tree form no rings; looking for some costs a tenth
    _there[:] = [partial(examine, shop, knowledge, today)]


def _examine_there(path: Path) -> Examined:
    return _there[0](path)
