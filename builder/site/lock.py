"""A lock on an open file; the system releases it when the process ends, however it ends.

In: an open file. Out: whether this process holds the lock.
"""

from typing import IO

try:
    import fcntl
except ImportError:  # Windows: avoiding two builds at the same time is up to the user
    fcntl = None  # type: ignore[assignment]


def lock_file(file: IO[str], *, wait: bool) -> bool:
    """Take the lock; without `wait`, return False where another process holds it."""
    if fcntl is None:
        return True
    try:
        fcntl.flock(file, fcntl.LOCK_EX if wait else fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True
