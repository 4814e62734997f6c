"""Progress of a long piece of work, reported to the caller.

In: results as they come. Out: the same results; a `Progress` is called before the first and after
each. Rooms take one as an argument and know nothing of terminals.
"""

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

Progress = Callable[[str, int, int], None]  # what is done, how many are done, of how many
R = TypeVar("R")


def no_progress(_what: str, _done: int, _total: int) -> None:
    """Report nothing."""


def counted(results: Iterable[R], progress: Progress, what: str, total: int) -> Iterator[R]:
    """Yield results and report after each how many there are."""
    progress(what, 0, total)
    for done, result in enumerate(results, start=1):
        progress(what, done, total)
        yield result
