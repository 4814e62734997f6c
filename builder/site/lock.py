"""A lock on an open file, which the system lets go of when the process ends, however it ends.

In: an open file. Out: whether it is ours now.
"""

from typing import IO

try:
    import fcntl
except ImportError:  # Windows: two builds at the same time are then the user's to avoid
    fcntl = None  # type: ignore[assignment]


def lock(file: IO[str], *, wait: bool) -> bool:
    """Take the lock; without `wait`, give up where another process holds it."""
    if fcntl is None:
        return True
    try:
        fcntl.flock(file, fcntl.LOCK_EX if wait else fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    return True
