"""The preview for authors: checks the shop on every save, and reloads open pages.

In: a shop, and a function that makes the preview of its files. Out: a server on this machine, until
it's interrupted, and a report in the terminal for each save. The pages themselves don't change: the
server adds one script to each as it serves it. Whatever happens, the last preview stays, and its
pages say what's wrong.
"""

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import datetime
from functools import partial
from pathlib import Path
from time import monotonic
from typing import NamedTuple

from builder.site.current_site import CurrentSite, trouble_text
from builder.site.local_pages import PreviewHandler
from builder.site.local_server import LocalServer
from builder.site.preview import Preview
from builder.site.watch import FileTimes, file_times, settled_files


class Saved(NamedTuple):
    """What came of a save."""

    preview: Preview
    errors: int
    report: str  # how many findings, and each in a line


Rebuild = Callable[[FileTimes], Saved]


def print_line(line: str) -> None:
    """Print a line at once; a closed terminal ends nothing, since pages are still open."""
    with suppress(OSError):
        print(line, flush=True)


def serve_site(
    shop: Path,
    rebuild: Rebuild,
    port: int = 8000,
    log: Callable[[str], None] = print_line,
) -> None:
    """Serve a shop's site on this machine until interrupted.

    Raises OSError where the port can't be used; the message names `--port`.
    """
    if threading.current_thread() is threading.main_thread():
        signal.signal(signal.SIGTERM, signal.default_int_handler)  # ends as cleanly as Ctrl+C
    site = CurrentSite(log)
    build = partial(_build, shop, rebuild, site, log)
    with suppress(KeyboardInterrupt), _running(port, site, log) as server:
        states = settled_files(shop)
        build(next(states))
        log(f"Serving at http://127.0.0.1:{server.server_port}/ - stop with Ctrl+C")
        for files in states:
            build(files)


@contextmanager
def _running(port: int, site: CurrentSite, log: Callable[[str], None]) -> Iterator[LocalServer]:
    with LocalServer(port, partial(PreviewHandler, site), log) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield server
        finally:
            server.shutdown()


def _build(
    shop: Path,
    rebuild: Rebuild,
    site: CurrentSite,
    log: Callable[[str], None],
    files: FileTimes,
) -> None:
    """Check the files of a save and show them; report any error and go on."""
    time, start = f"{datetime.now():%H:%M:%S}", monotonic()
    try:
        saved = rebuild(files)
        site.publish(saved.preview, saved.errors)
        log(f"{time}  {monotonic() - start:.2f} s  {saved.report}")
    except Exception as error:
        # If files changed meanwhile, the next save follows and reports what is still wrong.
        if file_times(shop) == files:
            trouble = f"The site couldn't be built: {trouble_text(error)}"
            site.report(trouble)
            log(trouble)
