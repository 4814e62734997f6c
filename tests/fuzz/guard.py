"""One piece of work of ours, watched for tracebacks, hangs and memory.

In: a function. Out: a `Trouble` if it did not end as it should: with status 0, 1 or 2, in five
seconds of work, in less than 500 MB more than before.
"""

import contextlib
import io
import resource
import signal
import traceback
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from types import FrameType

from builder.commands.main import OUR_BUG

SECONDS = 5
MEGABYTES = 500
PEAK = Path("/proc/self/clear_refs")  # "5" there forgets the peak of memory so far


@dataclass(frozen=True, slots=True)
class Trouble:
    """What went wrong: the command, and in one line by which like ones are counted."""

    command: str
    kind: str
    detail: str


class _HangError(BaseException):
    """Raised by the alarm; no `except Exception` on the way swallows it."""


def watch(name: str, run: Callable[[], int]) -> Trouble | None:
    """Run one command; return what went wrong."""
    before = _peak()
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
    more = (_highest() - before) // 1024
    if more > MEGABYTES:
        return Trouble(name, "memory", f"{more} MB more")
    return None if status in (0, 1, 2) else Trouble(name, f"status {status}", "")


def _peak() -> int:
    """Forget earlier peaks, where the system allows it, and return the highest since, in KiB."""
    with contextlib.suppress(OSError):
        PEAK.write_text("5")
    return _highest()


def _highest() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


def _hang(_number: int, _frame: FrameType | None) -> None:
    raise _HangError


def _place(error: BaseException) -> str:
    """Name the last line of our own on the way to an error."""
    frames = traceback.extract_tb(error.__traceback__)
    ours = [frame for frame in frames if "/builder/" in frame.filename] or list(frames)
    return f"{ours[-1].filename.rpartition('/builder/')[2]}:{ours[-1].name}"
