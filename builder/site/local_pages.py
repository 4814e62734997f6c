"""The preview: one request of a page that an author has open.

In: the folder of the site, and `CurrentSite` with the result of the last build. Out: its files;
every page gets one more script, which reloads it after a build.

Only requests for a local host name are answered: a web page whose own name resolves to this machine
can read nothing of the shop.
"""

import json
import re
import time
from dataclasses import asdict, dataclass
from html import escape
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler
from pathlib import Path
from typing import Any

from builder.web import WEB

_RELOAD, _NO_SITE = WEB / "reload.js", Path(__file__).with_name("no_site.html")
_LOCAL_HOST = re.compile(r"(localhost|127\.0\.0\.1|\[::1\])(:[0-9]{1,5})?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class BuildStatus:
    """What a page asks for again and again: the answer to `/changed`."""

    version: int  # of the site that is served
    errors: int = 0  # of the last build
    trouble: str = ""  # why the last build failed; "" where it didn't


class CurrentSite:
    """The site that is served: its status is replaced after every build."""

    def __init__(self) -> None:
        """Start with a version that no earlier run has used: its pages may still be open."""
        self.status = BuildStatus(version=int(time.time()))

    def publish(self, errors: int) -> None:
        """Announce a new site to open pages."""
        self.status = BuildStatus(self.status.version + 1, errors)

    def report(self, trouble: str) -> None:
        """Announce that the site is older than the files, and why."""
        self.status = BuildStatus(self.status.version, self.status.errors, trouble)


class PreviewHandler(SimpleHTTPRequestHandler):
    """Serves the files of the site, and tells pages when to reload."""

    timeout = 10  # seconds until an idle connection is closed

    def __init__(self, site: CurrentSite, *args: Any, directory: str) -> None:
        """Handle one connection; `site` is shared by all."""
        self.site = site
        super().__init__(*args, directory=directory)

    def parse_request(self) -> bool:
        """Refuse a request for another host."""
        if not super().parse_request():
            return False
        hosts = self.headers.get_all("Host", [])
        if len(hosts) == 1 and _LOCAL_HOST.fullmatch(hosts[0].strip()):
            return True
        self._answer("text/plain", "This server answers to localhost only.\n", HTTPStatus.FORBIDDEN)
        return False

    def do_GET(self) -> None:
        """Answer the preview's two addresses, add the script to pages, serve the other files."""
        status = self.site.status  # before the page is read: better one reload too many
        path = re.split("[?#]", self.path, maxsplit=1)[0]
        if path == "/changed":
            self._answer("application/json", json.dumps(asdict(status)))
        elif path == "/reload.js":
            self._answer("text/javascript", _RELOAD.read_text("utf-8"))
        elif (page := self._page(path)) is not None:
            self._answer("text/html", _with_script(page, status))
        elif not Path(self.directory, "index.html").exists():
            why = escape(status.trouble or "It's being built.")
            page = _with_script(_NO_SITE.read_text("utf-8").replace("{why}", why), status)
            self._answer("text/html", page, HTTPStatus.SERVICE_UNAVAILABLE)
        else:
            super().do_GET()

    def _page(self, path: str) -> str | None:
        file = Path(self.translate_path(path))
        if path.endswith("/"):
            file /= "index.html"
        try:
            return file.read_text("utf-8") if file.suffix == ".html" else None
        except (OSError, ValueError):  # missing, perhaps only for a moment; not a file name
            return None

    def send_head(self) -> Any:
        """Start an answer that is a file."""
        try:
            return super().send_head()
        except ValueError:  # not a file name
            return self.send_error(HTTPStatus.NOT_FOUND)

    def list_directory(self, _path: Any) -> None:
        """Refuse to list a folder: everything there is to see has a page."""
        self.send_error(HTTPStatus.NOT_FOUND)

    def end_headers(self) -> None:
        """Forbid caching: the next build may have another version."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def _answer(self, kind: str, text: str, status: HTTPStatus = HTTPStatus.OK) -> None:
        body = text.encode()
        self.send_response(status)
        self.send_header("Content-Type", f"{kind}; charset=utf-8")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Log no requests: the terminal is for findings."""


def _with_script(page: str, status: BuildStatus) -> str:
    script = f'<script src="/reload.js" data-version="{status.version}" defer></script>'
    return page.replace("</head>", f"{script}</head>", 1)
