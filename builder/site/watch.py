"""Watches for saves by polling.

In: a shop's folder. Out: the state of its files, each time they have changed and settled.

Polling is on purpose: the system's change notices get lost when a folder is deleted and comes back
(a checkout of another branch), when too much happens at once, and on network disks. For a thousand
trees one poll takes about ten milliseconds.
"""

import os
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

_WATCHED = ("trees", "kb", "site_config")  # nothing else in the shop's folder is polled
_PAUSE = 0.1  # seconds between two polls
_PAUSE_FACTOR = 9  # the pause is at least this many times as long as the poll
_SETTLE = 0.05  # seconds without a change before a build starts: editors write twice
_MOST_POLLS = 30  # after which a build starts although files still change

FileTimes = Mapping[Path, tuple[int, int, int]]  # by path: modification time, size, inode


def file_times(shop: Path) -> FileTimes:
    """Poll every file that a check reads."""
    files: dict[Path, tuple[int, int, int]] = {}
    for name in _WATCHED:
        for folder, _, names in os.walk(shop / name):
            for path in (Path(folder, file) for file in names):
                try:
                    status = path.stat()
                except OSError:  # deleted meanwhile, or a link to nothing
                    files[path] = (0, 0, 0)
                else:
                    files[path] = (status.st_mtime_ns, status.st_size, status.st_ino)
    return files


def settled_files(shop: Path) -> Iterator[FileTimes]:
    """Yield the state of the files now, and again each time they have changed and settled."""
    before = file_times(shop)
    while True:
        yield before
        before = _settled(shop, _changed(shop, before))


def _changed(shop: Path, before: FileTimes) -> FileTimes:
    """Wait until a file changes."""
    while True:
        start = time.monotonic()
        now = file_times(shop)
        if now != before:
            return now
        time.sleep(max(_PAUSE, _PAUSE_FACTOR * (time.monotonic() - start)))


def _settled(shop: Path, now: FileTimes) -> FileTimes:
    """Wait until no file changes any more, but not forever."""
    for _ in range(_MOST_POLLS):
        time.sleep(_SETTLE)
        before, now = now, file_times(shop)
        if now == before:
            break
    return now
