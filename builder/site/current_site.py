"""The site that is served: the preview of the last save, and what open pages have to know.

In: a new preview, or why there is none. Out: its files, and a status to wait for.
"""

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, replace

from builder.pages import addresses
from builder.site.preview import Preview

_LONGEST_WAIT = 20.0  # seconds until a page is answered although nothing has changed
_LOOK = 0.5  # seconds between two looks at whether the page still waits
_LONGEST_ERROR = 300  # characters that fit a line and a banner
_PAGE = ".html"


@dataclass(frozen=True, slots=True)
class SiteStatus:
    """What a page asks for again and again: the answer to `/changed`."""

    version: int  # of the site that is served
    errors: int = 0  # of the last check
    trouble: str = ""  # why there is no newer version; "" where there is
    news: int = 0  # a page that has seen this number has seen all of the above


class CurrentSite:
    """The site as it is now; several threads ask for it."""

    def __init__(self, log: Callable[[str], None]) -> None:
        """Start with a version that no earlier run has used: its pages may still be open."""
        self.status = SiteStatus(version=int(time.time()))
        self._preview: Preview | None = None
        self._log = log
        self._failed: set[str] = set()  # pages whose failure was printed
        self._changed = threading.Condition()

    @property
    def is_empty(self) -> bool:
        """Whether there was no preview yet."""
        return self._preview is None

    def publish(self, preview: Preview, errors: int) -> None:
        """Announce a new preview to open pages."""
        self._preview = preview
        self._failed.clear()
        self._announce(SiteStatus(self.status.version + 1, errors))

    def report(self, trouble: str) -> None:
        """Announce that the site is older than the files, and why."""
        self._announce(replace(self.status, trouble=trouble))

    def _announce(self, status: SiteStatus) -> None:
        with self._changed:
            self.status = replace(status, news=self.status.news + 1)
            self._changed.notify_all()

    def wait(self, seen: int | None, gone: Callable[[], bool]) -> SiteStatus:
        """Return the status once it differs from what a page has seen, or the page is gone."""
        end = time.monotonic() + _LONGEST_WAIT
        with self._changed:
            while not self._changed.wait_for(lambda: self.status.news != seen, _LOOK):
                if time.monotonic() > end or gone():
                    break
            return self.status

    def file(self, name: str) -> bytes | None:
        """Return a file of the site; None where there is none."""
        return self._preview.file(name) if self._preview else None

    def moved(self, name: str) -> str:
        """Return where the page of a renamed tree is now; of any other the name itself."""
        moved = self._preview.moved if self._preview else {}
        pages = {addresses.tree_path(old) + _PAGE: addresses.tree_path(new) + _PAGE
                 for old, new in moved.items()}  # fmt: skip
        return pages.get(name, name)

    def failed(self, name: str, error: Exception) -> str:
        """Print once why a page can't be made, and return it."""
        why = f"{name} can't be shown: {trouble_text(error)}"
        if name not in self._failed:
            self._failed.add(name)
            self._log(why)
        return why


def trouble_text(error: Exception) -> str:
    """Say in a line why something failed, and whether that's ours."""
    message = " ".join(str(error).split())[:_LONGEST_ERROR]
    if isinstance(error, OSError):
        return f"{message}. Fix that, then save any file."
    return (
        f"{type(error).__name__}: {message}. "
        "That's a bug in Baytree, not a mistake of yours; to go on, undo your last change."
    )
