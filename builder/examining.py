"""Trees read and judged, on as many cores as there are.

In: files of a shop and what is known beside them. Out: an `Entry` of each, with the findings of a
tree that no other leads into; or the findings of each in its library. A tree is read, and dropped
before the next.
"""

import gc
import os
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any, TypeVar

from builder.memory import Entry, Findings, entry, raw_content
from builder.model.library import Library
from builder.model.summary import summary_of
from builder.model.tree import Tree
from builder.reader.trees import read_tree
from builder.rules.judge import judge

WORTH_IT = 40  # trees; for fewer, starting another process takes longer than it saves
AT_ONCE = 16  # trees handed to a process at a time
T = TypeVar("T")


def examine_all(
    shop: Path, files: Sequence[str], knowledge: Library, today: date
) -> Sequence[Entry]:
    """Examine files that nothing is known of, in their order."""
    return _spread(partial(_examine, shop, knowledge, today), files)


def judge_all(
    shop: Path, files: Sequence[str], library: Library, today: date
) -> Sequence[Findings]:
    """Judge sound files beside their library, in their order."""
    return _spread(partial(_findings, shop, library, today), files)


def judged(shop: Path, library: Library, today: date, file: str) -> tuple[Tree, Findings, Findings]:
    """Read a tree; return it, the mistakes of its text, and what the rules find."""
    tree, mistakes = read_tree(shop, shop / file)
    if tree is None or tree.revision != library.trees[tree.id].revision:
        raise FileNotFoundError(f"{file} was changed while it was being checked")
    return tree, mistakes, judge(tree, library, today)


def unjudged(shop: Path, file: str) -> Entry:
    """Read one tree and keep what stands in it; nothing is said of its soundness."""
    return _read(shop, file, lambda _tree: ())


def _findings(shop: Path, library: Library, today: date, file: str) -> Findings:
    return judged(shop, library, today, file)[2]


def _examine(shop: Path, knowledge: Library, today: date, file: str) -> Entry:
    """Read one tree, judge it as if it were alone, and keep what the others need to know."""
    return _read(shop, file, lambda tree: judge(tree, knowledge, today))


def _read(shop: Path, file: str, found: Callable[[Tree], Findings]) -> Entry:
    # Taken first: should the file change meanwhile, the next check sees that it is not the same.
    raw = raw_content(shop / file)
    tree, mistakes = read_tree(shop, shop / file)
    if tree is None:
        return entry(raw, None, mistakes, ())
    return entry(raw, summary_of(tree), mistakes, found(tree))


def _spread(work: Callable[[str], T], files: Sequence[str]) -> Sequence[T]:
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    if len(files) < WORTH_IT or (cores or 1) < 2:
        return [work(file) for file in files]
    with ProcessPoolExecutor(cores, initializer=_begin, initargs=(work,)) as pool:
        return list(pool.map(_do_there, files, chunksize=AT_ONCE))


_there: list[Callable[[str], Any]] = []  # the work of each process, handed over once


def _begin(work: Callable[[str], Any]) -> None:
    gc.set_threshold(100_000)  # values of a tree form no rings; looking for some costs a tenth
    _there[:] = [work]


def _do_there(file: str) -> Any:
    return _there[0](file)
