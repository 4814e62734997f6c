"""How far a long piece of work is, told to whoever waits.

In: results as they come. Out: the same results; before the first and after each a `Progress` is
called. Rooms take one as an argument and know nothing of terminals.
"""

from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

Progress = Callable[[str, int, int], None]  # what is done, how many are done, of how many
R = TypeVar("R")


def no_progress(_what: str, _done: int, _total: int) -> None:
    """Tell nobody."""


def counted(results: Iterable[R], progress: Progress, what: str, total: int) -> Iterator[R]:
    """Yield results and tell after each how many there are."""
    progress(what, 0, total)
    for done, result in enumerate(results, start=1):
        progress(what, done, total)
        yield result
