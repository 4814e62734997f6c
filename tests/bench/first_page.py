"""How soon the first page can be used at 1.6 Mbit/s and 150 ms.

    python tests/bench/first_page.py SITE

In: a built site. Out: for the first page, a tree and the search the milliseconds until it is
painted and until it can be used, from a server of this file that compresses, waits 150 ms before
each answer and sends 200 kB in a second over all its connections.
"""

import gzip
import statistics
import sys
import threading
import time
from contextlib import suppress
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

SPEED = 200_000  # bytes in a second
DELAY = 0.15  # seconds before each answer
PIECE = 2_000  # bytes sent at a time
COMPRESSED = (".html", ".css", ".js", ".svg")
RUNS = 5


class Slow(SimpleHTTPRequestHandler):
    """Hands out files as a slow line does."""

    line = threading.Lock()

    def do_GET(self) -> None:
        """Wait, compress, and send piece by piece."""
        time.sleep(DELAY)
        file = Path(self.translate_path(self.path.split("?")[0]))
        if not file.is_file():
            self.send_error(404)
            return
        body, headers = file.read_bytes(), {"Content-Type": self.guess_type(str(file))}
        if file.suffix in COMPRESSED:
            body, headers = gzip.compress(body), headers | {"Content-Encoding": "gzip"}
        self.send_response(200)
        for name, value in (headers | {"Content-Length": str(len(body))}).items():
            self.send_header(name, value)
        self.end_headers()
        with suppress(ConnectionError):  # the page was left
            for start in range(0, len(body), PIECE):
                piece = body[start : start + PIECE]
                with self.line:
                    time.sleep(len(piece) / SPEED)
                self.wfile.write(piece)

    def log_message(self, *_: object) -> None:
        """Say nothing."""


# Notes in the page itself when something that fits is there, so that the driver costs nothing.
WATCH = """(() => {
  globalThis.there = {};
  const look = () => {
    for (const what of ["#find input", ".find-hits a", ".button.first"])
      if (document.querySelector(what)) globalThis.there[what] ??= performance.now();
  };
  new MutationObserver(look).observe(document, { childList: true, subtree: true });
})();"""


def first_page(page: Page, site: Path, root: str) -> float:
    """Open the first page: a word can be typed."""
    page.goto(f"{root}/index.html")
    return there(page, "#find input")


def search(page: Page, site: Path, root: str) -> float:
    """Open the first page from an address with words in it: the first hit is there."""
    page.goto(f"{root}/index.html#q=battery%20light")
    return there(page, ".find-hits a")


def tree(page: Page, site: Path, root: str) -> float:
    """Open the largest tree from a link that was sent: its first step can be pressed."""
    largest = max((site / "trees").rglob("*.html"), key=lambda file: file.stat().st_size)
    page.goto(f"{root}/{largest.relative_to(site).as_posix()}")
    return max(there(page, ".button.first"), painted(page))


def there(page: Page, what: str) -> float:
    """Return when something was there, in milliseconds after the request."""
    page.wait_for_selector(what)
    return float(page.evaluate("what => globalThis.there[what]", what))


def painted(page: Page) -> float:
    """Return when something was first painted, in milliseconds after the request."""
    entry = "performance.getEntriesByName('first-contentful-paint')[0]"
    page.wait_for_function(f"() => !!{entry}", polling=20)
    return float(page.evaluate(f"{entry}.startTime"))


def main(site: Path) -> None:
    """Measure and print."""
    handler = partial(Slow, directory=str(site))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as server, sync_playwright() as play:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        root = f"http://127.0.0.1:{server.server_port}"
        browser = play.chromium.launch(executable_path="/usr/bin/chromium", args=["--no-sandbox"])
        for what in (first_page, search, tree):
            times = []
            for _ in range(RUNS):
                context = browser.new_context(viewport={"width": 390, "height": 844},
                                              bypass_csp=True)  # fmt: skip
                page = context.new_page()
                page.add_init_script(WATCH)
                usable = what(page, site, root)
                times.append((painted(page), usable))
                context.close()
            paint, usable = (statistics.median(one) for one in zip(*times, strict=True))
            print(f"{what.__name__:12} painted {paint:5.0f} ms, usable {usable:5.0f} ms")
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]))
