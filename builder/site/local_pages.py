"""The preview: one request of a page that an author has open.

In: `CurrentSite`, with the preview of the last save. Out: its files; every page gets one more
script, which reloads it after a save.

Only requests for a local host name are answered: a web page whose own name resolves to this machine
can read nothing of the shop.
"""

import json
import mimetypes
import re
import socket
from dataclasses import asdict
from html import escape
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler
from pathlib import Path
from select import select
from typing import Any
from urllib.parse import parse_qs, quote, unquote

from builder.site.current_site import CurrentSite, SiteStatus
from builder.web import WEB

_RELOAD, _NO_SITE = WEB / "reload.js", Path(__file__).with_name("no_site.html")
_LOCAL_HOST = re.compile(r"(localhost|127\.0\.0\.1|\[::1\])(:[0-9]{1,5})?", re.IGNORECASE)
_NO_PAGE = ("There's no page here", "The address may be wrong, or its file has another name now.")


class PreviewHandler(BaseHTTPRequestHandler):
    """Serves the files of the site, and tells pages when to reload."""

    timeout = 10  # seconds until an idle connection is closed

    def __init__(self, site: CurrentSite, *args: Any) -> None:
        """Handle one connection; `site` is shared by all."""
        self.site = site
        super().__init__(*args)

    def parse_request(self) -> bool:
        """Refuse a request for another host."""
        if not super().parse_request():
            return False
        hosts = self.headers.get_all("Host", [])
        if len(hosts) == 1 and _LOCAL_HOST.fullmatch(hosts[0].strip()):
            return True
        self._answer(
            "text/plain", b"This server answers to localhost only.\n", HTTPStatus.FORBIDDEN
        )
        return False

    def do_HEAD(self) -> None:
        """Answer without the content."""
        self.do_GET()

    def do_GET(self) -> None:
        """Answer the preview's two addresses, add the script to pages, serve the other files."""
        path, _, query = self.path.partition("#")[0].partition("?")
        if path == "/changed":
            seen = parse_qs(query).get("seen", [""])[0]
            status = self.site.wait(int(seen) if seen.isdecimal() else None, self._is_gone)
            self._answer("application/json", json.dumps(asdict(status)).encode())
        elif path == "/reload.js":
            self._answer("text/javascript", _RELOAD.read_bytes())
        else:
            name = unquote(path, errors="replace").lstrip("/")
            self._answer_file(f"{name}index.html" if name.endswith("/") or not name else name)

    def _answer_file(self, name: str) -> None:
        status = self.site.status  # before the page is made: better one reload too many
        try:
            content = self.site.file(name)
        except Exception as error:
            why = self.site.failed(name, error)
            self._answer_page("This page can't be shown", why, HTTPStatus.INTERNAL_SERVER_ERROR)
            return
        if content is not None and name.endswith(".html"):
            self._answer("text/html", _with_script(content.decode(), status))
        elif content is not None:
            self._answer(_kind(name), content)
        elif (moved := self.site.moved(name)) != name:
            self._redirect(f"/{quote(moved)}")
        elif self.site.is_empty:
            why = status.trouble or "It's being built."
            self._answer_page("There's no site yet", why, HTTPStatus.SERVICE_UNAVAILABLE)
        else:
            self._answer_page(*_NO_PAGE, HTTPStatus.NOT_FOUND)

    def _is_gone(self) -> bool:
        """Whether the browser has hung up, as it does when it leaves a page that waits."""
        try:
            readable = select([self.connection], [], [], 0)[0]
            return bool(readable) and not self.connection.recv(1, socket.MSG_PEEK)
        except (OSError, ValueError):
            return True

    def _redirect(self, address: str) -> None:
        self.send_response(HTTPStatus.FOUND)  # for now: the tree may get its old name back
        self.send_header("Location", address)
        self.send_header("Content-Length", "0")
        self.end_headers()

    def _answer_page(self, title: str, why: str, code: HTTPStatus) -> None:
        text = _NO_SITE.read_text("utf-8").replace("{title}", title).replace("{why}", escape(why))
        self._answer("text/html", _with_script(text, self.site.status), code)

    def end_headers(self) -> None:
        """Forbid caching: the next save may bring another version."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def _answer(self, kind: str, body: bytes, status: HTTPStatus = HTTPStatus.OK) -> None:
        self.send_response(status)
        is_text = kind.startswith("text/") or kind == "application/json"
        self.send_header("Content-Type", f"{kind}; charset=utf-8" if is_text else kind)
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, *_: object) -> None:
        """Log no requests: the terminal is for findings."""


def _kind(name: str) -> str:
    return mimetypes.guess_type(name)[0] or "application/octet-stream"


def _with_script(page: str, status: SiteStatus) -> bytes:
    script = f'<script src="/reload.js" data-version="{status.version}" defer></script>'
    return page.replace("</head>", f"{script}</head>", 1).encode()
