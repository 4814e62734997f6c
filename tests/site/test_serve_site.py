"""The site while an author is at work."""

import http.client
import json
import socket
import threading
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from builder.check.unchecked_library import read_library
from builder.commands.main import main
from builder.site.local_server import MAX_CONNECTIONS
from builder.site.serve_site import serve_site

from .conftest import build_shop

PATIENCE = 90  # seconds; a build takes one or two where nothing else runs


@dataclass
class Running:
    """A server under test, and what it has said on its terminal."""

    port: int
    spoken: list[str] = field(default_factory=list)
    fails: list[BaseException] = field(default_factory=list)  # raised by the next builds

    @property
    def address(self) -> str:
        """Where it is."""
        return f"http://127.0.0.1:{self.port}"

    def get(self, path: str) -> str:
        """Fetch a page."""
        with urllib.request.urlopen(self.address + path, timeout=30) as answer:
            return str(answer.read().decode())

    def news(self) -> dict[str, Any]:
        """Ask what a page asks."""
        news: dict[str, Any] = json.loads(self.get("/changed"))
        return news

    def until(self, wanted: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
        """Ask again and again, as a page does."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if wanted(news := self.news()):
                return news
            time.sleep(0.1)
        raise AssertionError(f"it never came: {self.news()}")


def free_port() -> int:
    """Return a port that nobody listens at."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


Start = Callable[..., Running]


@pytest.fixture
def start(shop: Path) -> Iterator[Start]:
    """Return a function that serves the shop with builds that fail first; all end with the test."""
    servers: list[tuple[Running, threading.Thread]] = []

    def started(*fails: Exception) -> Running:
        ready, running = threading.Event(), Running(free_port(), fails=list(fails))

        def say(words: str) -> None:
            running.spoken.append(words)
            if "Serving" in words:
                ready.set()

        def rebuild(out: Path) -> int:
            if running.fails:
                raise running.fails.pop(0)
            _, findings = read_library(shop)
            build_shop(shop, out, findings=findings)
            return len(findings)

        thread = threading.Thread(target=serve_site, args=(shop, rebuild, running.port, say))
        thread.start()
        servers.append((running, thread))
        assert ready.wait(PATIENCE)
        return running

    yield started
    for running, thread in servers:
        running.fails[:] = [KeyboardInterrupt()]
        touch(shop)
        thread.join(PATIENCE)
        assert not thread.is_alive()


@pytest.fixture
def running(start: Start) -> Running:
    """Serve the test shop."""
    return start()


def touch(shop: Path) -> None:
    """Save a file without a change of meaning."""
    with (shop / "kb" / "tools.yml").open("a") as file:
        file.write("# saved\n")


def test_a_broken_tree_shows_its_findings_and_comes_back(shop: Path, running: Running) -> None:
    """While a tree is broken its page shows what is wrong, at which line; mended, it is back."""
    file, page = shop / "trees" / "horn" / "silent.yml", "/trees/horn/silent.html"
    sound = file.read_text()
    assert "Horn is silent" in running.get(page)
    assert "/reload.js" in running.get(page)

    file.write_text(sound.replace("    minutes: 2\n", "    minutse: 2\n", 1))
    running.until(lambda news: news["errors"] >= 1)
    assert "trees/horn/silent.yml:" in running.get(page)
    assert "minutse" in running.get(page)

    file.write_text(sound)
    running.until(lambda news: news["errors"] == 0)
    assert 'id="step-fuse"' in running.get(page)


def test_a_build_that_fails_leaves_the_last_site(shop: Path, running: Running) -> None:
    """The trouble is told on the pages and in one line on the terminal; the next save mends it."""
    before = running.news()
    running.fails.append(KeyError("wheel"))
    touch(shop)
    news = running.until(lambda news: news["trouble"])
    assert news["version"] == before["version"]
    assert "Horn is silent" in running.get("/trees/horn/silent.html")
    assert running.spoken[1:] == [news["trouble"]]
    assert "KeyError: 'wheel'" in news["trouble"]
    assert "\n" not in news["trouble"]

    touch(shop)
    news = running.until(lambda news: not news["trouble"])
    assert news["version"] == before["version"] + 1


def test_trouble_of_the_first_build_is_a_page_until_it_is_mended(shop: Path, start: Start) -> None:
    """Without a site there is a page that says why, as text; it opens the site by itself."""
    running = start(OSError("the disk is <full>"))
    with pytest.raises(urllib.error.HTTPError) as refused:
        running.get("/trees/horn/silent.html")
    page = refused.value.read().decode()
    assert refused.value.code == 503
    assert "the disk is &lt;full&gt;" in page
    assert "/reload.js" in page
    touch(shop)
    running.until(lambda news: not news["trouble"])
    assert "Horn is silent" in running.get("/trees/horn/silent.html")


def test_an_open_page_says_what_is_wrong_and_loads_again(
    shop: Path, running: Running, chromium: Browser
) -> None:
    """A banner in plain words while it is wrong, and the new page once it is right."""
    page = chromium.new_page()
    page.goto(f"{running.address}/trees/horn/silent.html")
    running.fails.append(ValueError("<b>odd</b>"))
    touch(shop)
    expect(page.locator(".serve-note")).to_contain_text("<b>odd</b>", timeout=PATIENCE * 1000)
    tree = shop / "trees" / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: Horn is silent", "title: Horn is weak"))
    expect(page.locator("#title")).to_have_text("Horn is weak", timeout=PATIENCE * 1000)
    expect(page.locator(".serve-note")).to_have_count(0)
    page.close()


def test_a_folder_that_vanishes_and_comes_back_is_still_watched(
    shop: Path, running: Running
) -> None:
    """A checkout of another branch deletes `trees/` and writes it again."""
    trees, away = shop / "trees", shop.parent / "away"
    before = running.news()["version"]
    trees.rename(away)
    running.until(lambda news: news["version"] > before or news["trouble"])
    away.rename(trees)
    running.until(lambda _: '"trees/horn/silent.html"' in running.get("/index.html"))
    tree = trees / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: Horn is silent", "title: Horn is weak"))
    running.until(lambda _: "Horn is weak" in running.get("/trees/horn/silent.html"))


LOCAL_NAMES = ("localhost", "LOCALHOST:8000", "127.0.0.1", "127.0.0.1:1", "[::1]", "[::1]:65535")
OTHER_NAMES = ("elsewhere.example", "localhost.elsewhere.example", "127.0.0.1.elsewhere.example",
               "127.0.0.2", "[::2]", "localhost:x", "localhost:8000@elsewhere", "")  # fmt: skip


def asked_as(running: Running, *hosts: str, method: str = "GET", path: str = "/") -> int:
    """Ask under names of a host; return the status."""
    line = http.client.HTTPConnection("127.0.0.1", running.port, timeout=30)
    line.putrequest(method, path, skip_host=True)
    for host in hosts:
        line.putheader("Host", host)
    line.endheaders()
    answer = line.getresponse()
    assert b"Horn" not in answer.read() or answer.status == 200
    line.close()
    return answer.status


def test_only_local_host_names_are_answered(running: Running) -> None:
    """A page from elsewhere whose name was made to lead here reads nothing of the shop."""
    assert {name: asked_as(running, name) for name in LOCAL_NAMES} == dict.fromkeys(
        LOCAL_NAMES, 200
    )
    for path in ("/", "/changed", "/reload.js", "/nowhere"):
        for method in ("GET", "HEAD"):
            for name in OTHER_NAMES:
                assert asked_as(running, name, method=method, path=path) == 403, (path, name)
    assert asked_as(running) == 403
    assert asked_as(running, "localhost", "elsewhere.example") == 403


def test_odd_addresses_are_answered_with_not_found(running: Running) -> None:
    """No list of files, nothing from outside the site, no trouble on the terminal."""
    for path in ("/assets/", "/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/%00", "/%00.html",
                 "/x" * 2000, "//[", "/%ff.html", "/index.html/x.html"):  # fmt: skip
        for method in ("GET", "HEAD"):
            assert asked_as(running, "localhost", method=method, path=path) == 404, path
    assert len(running.spoken) == 1


def answering() -> int:
    """Count the requests that are being answered."""
    return sum("process_request_thread" in one.name for one in threading.enumerate())


@pytest.fixture
def flood(running: Running) -> Iterator[list[socket.socket]]:
    """Open many more connections than are answered at a time, and ask nothing on them."""
    lines = [
        socket.create_connection(("127.0.0.1", running.port)) for _ in range(5 * MAX_CONNECTIONS)
    ]
    lines[-1].settimeout(PATIENCE)
    lines[-1].recv(1)  # the last one is turned away when all others have had their turn
    yield lines
    for line in lines:
        line.close()


def test_a_flood_of_connections_ends_nothing(running: Running, flood: list[socket.socket]) -> None:
    """No more threads than connections allowed; when the flood is gone, pages are back."""
    assert answering() == MAX_CONNECTIONS
    for line in flood:
        line.close()
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        try:
            assert "Horn is silent" in running.get("/trees/horn/silent.html")
            break
        except OSError:
            time.sleep(0.2)
    else:
        raise AssertionError("the pages never came back")
    assert len(running.spoken) == 1


def test_a_browser_that_hangs_up_is_no_trouble(running: Running) -> None:
    """A page that is left before it has come says nothing on the terminal."""
    for _ in range(50):
        with socket.create_connection(("127.0.0.1", running.port)) as line:
            line.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
            line.sendall(b"GET /assets/search-data.js HTTP/1.0\r\nHost: localhost\r\n\r\n")
    assert "Horn is silent" in running.get("/trees/horn/silent.html")
    assert len(running.spoken) == 1


@pytest.mark.parametrize("port", [70_000, -1])
def test_a_port_out_of_range_names_the_option(shop: Path, port: int) -> None:
    """The message says what to write instead."""
    with pytest.raises(OSError, match="--port"):
        serve_site(shop, lambda _: 0, port)


def test_a_port_in_use_names_the_option(shop: Path, running: Running) -> None:
    """A second server of the same port ends before it builds anything."""
    with pytest.raises(OSError, match=rf"port {running.port} .*--port"):
        serve_site(shop, lambda _: pytest.fail("built"), running.port)


def test_the_command_line_names_the_option_and_exits_with_2(
    shop: Path, running: Running, capsys: pytest.CaptureFixture[str]
) -> None:
    """In use or no port at all: one message, no traceback."""
    serve_at = ["--shop", str(shop), "serve", "--port"]
    assert main([*serve_at, str(running.port)]) == 2
    assert "give another with --port" in capsys.readouterr().err
    for port in ("99999", "-1", "eighty"):
        with pytest.raises(SystemExit) as end:
            main([*serve_at, port])
        assert end.value.code == 2
        assert "--port" in capsys.readouterr().err


def test_an_interrupt_in_a_build_is_a_clean_end(shop: Path) -> None:
    """Ctrl+C while the site is being built ends the server without a word."""

    def interrupted(_: Path) -> int:
        raise KeyboardInterrupt

    assert serve_site(shop, interrupted, free_port(), lambda words: pytest.fail(words)) is None
