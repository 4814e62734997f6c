"""The site while an author is at work: built anew on every change, and reloaded where it is open.

In: a shop and a function that builds its site into a folder and returns the number of errors. Out:
a server on this machine, until it is interrupted. Nothing of this is in the pages themselves: the
server adds one script to them as it hands them out. Whatever happens in a build, the last site that
was finished stays, and its pages say what is wrong.
"""

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from builder.site.local_pages import CurrentSite, Pages
from builder.site.local_server import LocalServer
from builder.site.watch import Files, files_of, settled

LONGEST = 300  # letters of an error that fit a line and a banner

Rebuild = Callable[[Path], int]


def on_terminal(words: str) -> None:
    """Print a line at once; a terminal that has gone ends nothing, for pages are still open."""
    with suppress(OSError):
        print(words, flush=True)


def serve(
    shop: Path,
    rebuild: Rebuild,
    port: int = 8000,
    say: Callable[[str], None] = on_terminal,
) -> None:
    """Serve a shop's site on this machine until interrupted.

    Raises OSError where the port can't be used; the message names `--port`.
    """
    if threading.current_thread() is threading.main_thread():
        signal.signal(signal.SIGTERM, signal.default_int_handler)  # as clean an end as Ctrl+C
    work = TemporaryDirectory(prefix="baytree-", ignore_cleanup_errors=True)
    with suppress(KeyboardInterrupt), work as folder:
        out, site = Path(folder) / "site", CurrentSite()
        handler = partial(Pages, site, directory=str(out))
        build = partial(_build, shop, lambda: rebuild(out), site, say)
        with _running(LocalServer(port, handler, say)) as server:
            moments = settled(shop)
            build(next(moments))
            say(f"Serving at http://127.0.0.1:{server.server_port}/ - stop with Ctrl+C")
            for files in moments:
                build(files)


@contextmanager
def _running(server: LocalServer) -> Iterator[LocalServer]:
    with server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield server
        finally:
            server.shutdown()


def _build(
    shop: Path,
    rebuild: Callable[[], int],
    site: CurrentSite,
    say: Callable[[str], None],
    files: Files,
) -> None:
    """Build once; an error of any kind is told and ends nothing."""
    try:
        site.publish(rebuild())
    except Exception as error:
        # Where files have changed meanwhile, the next build is due and tells if anything is wrong.
        if files_of(shop) == files:
            site.report(_trouble(error))
            say(_trouble(error))


def _trouble(error: Exception) -> str:
    words = " ".join(str(error).split())[:LONGEST]
    if isinstance(error, OSError):
        return f"The site couldn't be built: {words}. Fix that, then save any file."
    return (
        f"The site couldn't be built: {type(error).__name__}: {words}. "
        "That's a bug in Baytree, not a mistake of yours; to go on, undo your last change."
    )
