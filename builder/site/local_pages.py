"""One request of a page that is open while an author is at work.

In: a folder with a site, and `CurrentSite`, which says what the last build came to. Out: its files,
with one script more in every page, which loads the page again after a build.

Only requests for a local host name are answered: a page from elsewhere that has its own name lead
to this machine reads nothing of the shop.
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

RELOAD, NO_SITE = WEB / "reload.js", Path(__file__).with_name("no_site.html")
LOCAL = re.compile(r"(localhost|127\.0\.0\.1|\[::1\])(:[0-9]{1,5})?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class News:
    """What a page asks for again and again."""

    version: int  # of the site that is served
    errors: int = 0  # found by the last build
    trouble: str = ""  # why the last build could not be finished; "" where it was


class CurrentSite:
    """What is served; replaced whole after every build."""

    def __init__(self) -> None:
        """Begin with a version that no earlier run has used: its pages may still be open."""
        self.news = News(version=int(time.time()))

    def publish(self, errors: int) -> None:
        """Tell pages that there is a new site."""
        self.news = News(self.news.version + 1, errors)

    def report(self, trouble: str) -> None:
        """Tell pages that the site is older than the files, and why."""
        self.news = News(self.news.version, self.news.errors, trouble)


class Pages(SimpleHTTPRequestHandler):
    """Hands out the files of the site, and tells pages when to load again."""

    timeout = 10  # seconds; a connection on which nothing is asked is closed

    def __init__(self, site: CurrentSite, *args: Any, directory: str) -> None:
        """Take what is served with every request."""
        self.site = site
        super().__init__(*args, directory=directory)

    def parse_request(self) -> bool:
        """Refuse whatever was meant for another host."""
        if not super().parse_request():
            return False
        hosts = self.headers.get_all("Host", [])
        if len(hosts) == 1 and LOCAL.fullmatch(hosts[0].strip()):
            return True
        self._answer("text/plain", "This server answers to localhost only.\n", HTTPStatus.FORBIDDEN)
        return False

    def do_GET(self) -> None:
        """Answer the two addresses of our own, add the script to pages, hand out the rest."""
        news = self.site.news  # before the page is read: one load too many is better than too few
        path = re.split("[?#]", self.path, maxsplit=1)[0]
        if path == "/changed":
            self._answer("application/json", json.dumps(asdict(news)))
        elif path == "/reload.js":
            self._answer("text/javascript", RELOAD.read_text("utf-8"))
        elif (page := self._page(path)) is not None:
            self._answer("text/html", _with_script(page, news))
        elif not Path(self.directory, "index.html").exists():
            why = escape(news.trouble or "It is being built.")
            page = _with_script(NO_SITE.read_text("utf-8").replace("{why}", why), news)
            self._answer("text/html", page, HTTPStatus.SERVICE_UNAVAILABLE)
        else:
            super().do_GET()

    def _page(self, path: str) -> str | None:
        file = Path(self.translate_path(path))
        if path.endswith("/"):
            file /= "index.html"
        try:
            return file.read_text("utf-8") if file.suffix == ".html" else None
        except (OSError, ValueError):  # not there, or not just now; no name of a file
            return None

    def send_head(self) -> Any:
        """Begin the answer with a file."""
        try:
            return super().send_head()
        except ValueError:  # no name of a file
            return self.send_error(HTTPStatus.NOT_FOUND)

    def list_directory(self, _path: Any) -> None:
        """Show no list of files: a site has a page for whatever can be seen."""
        self.send_error(HTTPStatus.NOT_FOUND)

    def end_headers(self) -> None:
        """Let the browser keep nothing: the next build may have another."""
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
        """Say nothing of single requests: the terminal is for findings."""


def _with_script(page: str, news: News) -> str:
    script = f'<script src="/reload.js" data-version="{news.version}" defer></script>'
    return page.replace("</head>", f"{script}</head>", 1)
