"""What an author saves, noticed by looking.

In: a shop's folder. Out: one moment after another at which its files have changed and come to rest.

The files are looked at again and again: notices from the system get lost when a folder is deleted
and comes back (a checkout of another branch), when too much happens at once, and on network disks.
For a thousand trees one look takes some ten milliseconds.
"""

import os
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

READ = ("trees", "kb", "site_config")  # nothing else of the shop's folder is ever looked at
PAUSE = 0.3  # seconds between two looks
SHARE = 9  # how many times as long as the look itself the pause is at least
QUIET = 0.15  # seconds without a further change before a build begins: editors write twice
RESTLESS = 10  # looks after which a build begins although files still change

Files = Mapping[Path, tuple[int, int, int]]  # by path: when written, size, number on the disk


def files_of(shop: Path) -> Files:
    """Look at every file that a check reads; what vanishes meanwhile isn't there."""
    files: dict[Path, tuple[int, int, int]] = {}
    for name in READ:
        for folder, _, names in os.walk(shop / name):
            for path in (Path(folder, one) for one in names):
                try:
                    of = path.stat()
                except OSError:  # gone again, or a link to nothing
                    files[path] = (0, 0, 0)
                else:
                    files[path] = (of.st_mtime_ns, of.st_size, of.st_ino)
    return files


def settled(shop: Path) -> Iterator[Files]:
    """Yield the files as they are now, and again each time they have changed and come to rest."""
    before = files_of(shop)
    while True:
        yield before
        before = _at_rest(shop, _changed(shop, before))


def _changed(shop: Path, before: Files) -> Files:
    """Wait until the files are no longer as they were."""
    while True:
        begun = time.monotonic()
        now = files_of(shop)
        if now != before:
            return now
        time.sleep(max(PAUSE, SHARE * (time.monotonic() - begun)))


def _at_rest(shop: Path, now: Files) -> Files:
    """Wait until the files stay as they are, but not for ever."""
    for _ in range(RESTLESS):
        time.sleep(QUIET)
        before, now = now, files_of(shop)
        if now == before:
            break
    return now
