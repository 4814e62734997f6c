"""The site while an author is at work: built anew on every change, and reloaded where it is open.

In: a shop and a function that builds its site into a folder and returns the number of errors. Out:
a server on this machine, until it is interrupted. Nothing of this is in the pages themselves: the
server adds one script to them as it hands them out.
"""

import json
import tempfile
import threading
from collections.abc import Callable
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

from builder.web import WEB

RELOAD = WEB / "reload.js"
WATCHED = ("trees", "kb", "site_config")
PATIENCE = 20.0  # seconds that a page waits for an answer before it asks again
QUIET = 0.15  # seconds without a further change before a build begins: editors write twice

Rebuild = Callable[[Path], int]


class State:
    """Which build is served, and what it found; pages wait here for the next one."""

    def __init__(self) -> None:
        """Begin before the first build."""
        self.version = 0
        self.errors = 0
        self._news = threading.Condition()

    def publish(self, errors: int) -> None:
        """Tell every waiting page that there is a new build."""
        with self._news:
            self.version += 1
            self.errors = errors
            self._news.notify_all()

    def after(self, version: int) -> dict[str, int]:
        """Wait for a build after the given one, but not for ever."""
        with self._news:
            self._news.wait_for(lambda: self.version != version, PATIENCE)
            return {"version": self.version, "errors": self.errors}


class Pages(SimpleHTTPRequestHandler):
    """Hands out the files of the site, and tells pages when to load again."""

    def __init__(self, state: State, *args: object, directory: str) -> None:
        """Take the state with every request."""
        self.state = state
        super().__init__(*args, directory=directory)  # type: ignore[arg-type]

    def do_GET(self) -> None:
        """Answer the two addresses of our own, add the script to pages, hand out the rest."""
        address = urlsplit(self.path)
        if address.path == "/changed":
            since = parse_qs(address.query).get("since", ["0"])[0]
            known = int(since) if since.isdecimal() else 0
            self._answer("application/json", json.dumps(self.state.after(known)))
        elif address.path == "/reload.js":
            self._answer("text/javascript", RELOAD.read_text("utf-8"))
        elif (page := self._page(address.path)) is not None:
            script = f'<script src="/reload.js" data-version="{self.state.version}" defer></script>'
            self._answer("text/html", page.replace("</head>", f"{script}</head>", 1))
        else:
            super().do_GET()

    def _page(self, path: str) -> str | None:
        file = Path(self.translate_path(path))
        if path.endswith("/"):
            file /= "index.html"
        return file.read_text("utf-8") if file.suffix == ".html" and file.is_file() else None

    def _answer(self, kind: str, text: str) -> None:
        body = text.encode()
        self.send_response(200)
        self.send_header("Content-Type", f"{kind}; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Say nothing of single requests: the terminal is for findings."""


class Changes(FileSystemEventHandler):
    """Notes that something in the shop was written."""

    def __init__(self) -> None:
        """Begin with nothing changed."""
        self.seen = threading.Event()

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Note a change; that a file was merely read is none."""
        if event.event_type not in ("opened", "closed_no_write"):
            self.seen.set()


def serve(
    shop: Path, rebuild: Rebuild, port: int = 8000, said: Callable[[str], None] = print
) -> None:
    """Serve a shop's site on this machine until interrupted.

    Raises OSError where the port is taken.
    """
    with tempfile.TemporaryDirectory(prefix="baytree-") as folder:
        out = Path(folder) / "site"
        state, changes = State(), Changes()
        handler = partial(Pages, state, directory=str(out))
        with ThreadingHTTPServer(("127.0.0.1", port), handler) as server:
            state.publish(rebuild(out))
            threading.Thread(target=server.serve_forever, daemon=True).start()
            said(f"Serving at http://127.0.0.1:{server.server_port}/ - stop with Ctrl+C")
            _rebuild_on_change(shop, changes, lambda: state.publish(rebuild(out)))


def _rebuild_on_change(shop: Path, changes: Changes, build: Callable[[], None]) -> None:
    observer = Observer()
    for name in WATCHED:
        if (shop / name).is_dir():
            observer.schedule(changes, str(shop / name), recursive=True)
    observer.start()
    try:
        while True:
            changes.seen.wait()
            while changes.seen.is_set():
                changes.seen.clear()
                changes.seen.wait(QUIET)
            build()
    except KeyboardInterrupt:
        pass
    finally:
        observer.stop()
        observer.join()
