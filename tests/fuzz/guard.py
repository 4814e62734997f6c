"""Every command on a shop, in this process, watched for tracebacks, hangs and memory.

In: a shop. Out: a `Trouble` for each command that did not end as it should: with status 0, 1 or 2,
in five seconds of work, in less than 500 MB more than before.
"""

import contextlib
import io
import resource
import signal
import traceback
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from types import FrameType

from builder.cache.database import cache_file
from builder.check.unchecked_library import read_library
from builder.commands.main import OUR_BUG, main
from builder.reader.trees import read_tree, tree_files
from builder.walk.table import walk_table

SECONDS = 5
MEGABYTES = 500
QUICK = ("check", "walk", "find", "minutes")
SLOW = ("build", "print")
DAY = "2026-10-01"


@dataclass(frozen=True, slots=True)
class Trouble:
    """What went wrong: the command, and in one line by which like ones are counted."""

    command: str
    kind: str
    detail: str


class _HangError(BaseException):
    """Raised by the alarm; no `except Exception` on the way swallows it."""


def watched(shop: Path, commands: tuple[str, ...]) -> Iterator[Trouble]:
    """Run commands one after the other, and yield what went wrong."""
    for name in commands:
        for id_ in _trees(shop) if name in ("minutes", "print") else ("",):
            if trouble := watch(name, _command(shop, name, id_)):
                yield trouble
    cache_file(shop).unlink(missing_ok=True)


def _trees(shop: Path) -> list[str]:
    names = (path.relative_to(shop / "trees") for path in tree_files(shop))
    return [name.with_suffix("").as_posix() for name in names]


def _command(shop: Path, name: str, id_: str) -> Callable[[], int]:
    if name == "walk":
        return lambda: _walk(shop)
    beside = shop.parent
    arguments = {
        "check": ["check", "--today", DAY],
        "find": ["find", "horn", "quiet", "B1000"],
        "minutes": ["minutes", id_],
        "build": ["build", "--no-prints", "--today", DAY, "--out", str(beside / "site")],
        "print": ["print", id_, "--out", str(beside / "prints")],
    }[name]
    return lambda: main(["--shop", str(shop), *arguments])


def _walk(shop: Path) -> int:
    library, _ = read_library(shop)
    for path in tree_files(shop):
        tree, _ = read_tree(shop, path)
        if tree:
            walk_table(tree, library)
    return 0


def watch(name: str, run: Callable[[], int]) -> Trouble | None:
    """Run one command; return what went wrong."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    for alarm in (signal.SIGPROF, signal.SIGALRM):
        signal.signal(alarm, _hang)
    signal.setitimer(signal.ITIMER_PROF, SECONDS)
    signal.setitimer(signal.ITIMER_REAL, 20 * SECONDS)
    errors = io.StringIO()
    try:
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(errors):
            status = run()
    except _HangError as error:
        return Trouble(name, f"hang in {_place(error)}", traceback.format_exc())
    except BaseException as error:
        return Trouble(name, f"{type(error).__name__} in {_place(error)}", traceback.format_exc())
    finally:
        for timer in (signal.ITIMER_PROF, signal.ITIMER_REAL):
            signal.setitimer(timer, 0)
    if OUR_BUG in errors.getvalue():  # the command caught it, and exited with 2
        lines = errors.getvalue().strip().split("\n")
        return Trouble(name, lines[-1], errors.getvalue())
    more = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) // 1024
    if more > MEGABYTES:
        return Trouble(name, "memory", f"{more} MB more")
    return None if status in (0, 1, 2) else Trouble(name, f"status {status}", "")


def _hang(_number: int, _frame: FrameType | None) -> None:
    raise _HangError


def _place(error: BaseException) -> str:
    """Name the last line of our own on the way to an error."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if "/builder/" in frame.filename] or list(frames)
    return f"{ours[-1].filename.rpartition('/builder/')[2]}:{ours[-1].name}"
