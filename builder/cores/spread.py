"""The one way to spread work over processes.

In: work that depends on its item alone, and items; both are plain values, since they may have to
travel to another process. Out: the results in the order of the items, each as soon as it and all
before it are there, so that whoever waits can show how far it is.
"""

import gc
import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Sequence
from concurrent.futures import Future, ProcessPoolExecutor
from itertools import chain, islice
from typing import Any, TypeVar

WORTH_IT = 3  # portions; for fewer, starting another process takes longer than it saves
AHEAD = 2  # portions for each core that are under way: results are kept until their turn comes
T = TypeVar("T")
R = TypeVar("R")


def on_all_cores(work: Callable[[T], R], items: Iterable[T], portion: int = 1) -> Iterator[R]:
    """Yield the result of each item; `portion` items are handed to a process at a time.

    An error that the work raises is raised here in its turn, and the rest is left undone.
    """
    waiting = iter(items)
    first = list(islice(waiting, (WORTH_IT - 1) * portion + 1))
    cores = usable_cores()
    if cores < 2 or len(first) <= (WORTH_IT - 1) * portion:
        yield from map(work, chain(first, waiting))
        return
    pool = ProcessPoolExecutor(cores, initializer=_begin, initargs=(work,))
    under_way: deque[Future[list[R]]] = deque()
    try:
        for handed in _portions(chain(first, waiting), portion):
            under_way.append(pool.submit(_do_there, handed))
            if len(under_way) > AHEAD * cores:
                yield from under_way.popleft().result()
        while under_way:
            yield from under_way.popleft().result()
    finally:
        pool.shutdown(cancel_futures=True)


def usable_cores() -> int:
    """Return how many cores this process may use; a container often has fewer than the machine."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _portions(items: Iterator[T], size: int) -> Iterator[list[T]]:
    while handed := list(islice(items, size)):
        yield handed


_there: list[Callable[[Any], Any]] = []  # the work of each process, handed over once


def _begin(work: Callable[[Any], Any]) -> None:
    gc.set_threshold(100_000)  # values of a tree form no rings; looking for some costs a tenth
    _there[:] = [work]


def _do_there(items: Sequence[Any]) -> list[Any]:
    return [_there[0](item) for item in items]
