"""The preview for authors: rebuilds the site on every save, and reloads open pages.

In: a shop, and a function that builds its site into a folder and returns the number of errors. Out:
a server on this machine, until it's interrupted. The pages themselves don't change: the server adds
one script to each as it serves it. Whatever happens in a build, the last complete site stays, and
its pages say what's wrong.
"""

import signal
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from builder.site.local_pages import CurrentSite, PreviewHandler
from builder.site.local_server import LocalServer
from builder.site.watch import FileTimes, file_times, settled_files

_LONGEST_ERROR = 300  # characters that fit a line and a banner

Rebuild = Callable[[Path], int]


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
    work = TemporaryDirectory(prefix="baytree-", ignore_cleanup_errors=True)
    with suppress(KeyboardInterrupt), work as folder:
        out, site = Path(folder) / "site", CurrentSite()
        handler = partial(PreviewHandler, site, directory=str(out))
        build = partial(_build, shop, lambda: rebuild(out), site, log)
        with _running(LocalServer(port, handler, log)) as server:
            states = settled_files(shop)
            build(next(states))
            log(f"Serving at http://127.0.0.1:{server.server_port}/ - stop with Ctrl+C")
            for files in states:
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
    log: Callable[[str], None],
    files: FileTimes,
) -> None:
    """Build once; report any error and go on."""
    try:
        site.publish(rebuild())
    except Exception as error:
        # If files changed during the build, the next one follows and reports what is still wrong.
        if file_times(shop) == files:
            site.report(_trouble(error))
            log(_trouble(error))


def _trouble(error: Exception) -> str:
    message = " ".join(str(error).split())[:_LONGEST_ERROR]
    if isinstance(error, OSError):
        return f"The site couldn't be built: {message}. Fix that, then save any file."
    return (
        f"The site couldn't be built: {type(error).__name__}: {message}. "
        "That's a bug in Baytree, not a mistake of yours; to go on, undo your last change."
    )
