"""The preview: rebuilds on every save, survives errors and floods, answers this machine only."""

import http.client
import json
import re
import shutil
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

from builder.commands.main import main
from builder.commands.saved_shop import SavedShop
from builder.site.local_server import MAX_CONNECTIONS
from builder.site.serve_site import Saved, serve_site
from builder.site.watch import FileTimes

from .conftest import few_trees

PATIENCE = 90  # seconds; a build takes one or two where nothing else runs


@dataclass
class Running:
    """A server under test, and what it has printed."""

    port: int
    printed: list[str] = field(default_factory=list)
    fails: list[BaseException] = field(default_factory=list)  # raised by the next builds

    @property
    def address(self) -> str:
        """Return its address."""
        return f"http://127.0.0.1:{self.port}"

    def get(self, path: str) -> str:
        """Return a page."""
        with urllib.request.urlopen(self.address + path, timeout=30) as answer:
            return str(answer.read().decode())

    def status(self) -> dict[str, Any]:
        """Return the status that pages ask for."""
        status: dict[str, Any] = json.loads(self.get("/changed"))
        return status

    def until(self, condition: Callable[[dict[str, Any]], bool]) -> dict[str, Any]:
        """Ask for the status until it meets a condition, as a page does."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            if condition(status := self.status()):
                return status
            time.sleep(0.1)
        raise AssertionError(f"still {self.status()}")


def free_port() -> int:
    """Return a free port."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Return a small shop without errors: its closed jobs are of trees that it doesn't have."""
    shop = few_trees(tmp_path)
    shutil.rmtree(shop / "kb" / "cases")
    return shop


Start = Callable[..., Running]


@pytest.fixture
def start(shop: Path) -> Iterator[Start]:
    """Return a function that serves the shop; the first builds raise the given errors."""
    servers: list[tuple[Running, threading.Thread]] = []

    def started(*fails: Exception) -> Running:
        ready, running = threading.Event(), Running(free_port(), fails=list(fails))

        def log(line: str) -> None:
            running.printed.append(line)
            if "Serving" in line:
                ready.set()

        saved = SavedShop(shop)

        def rebuild(files: FileTimes) -> Saved:
            if running.fails:
                raise running.fails.pop(0)
            return saved.check(files)

        thread = threading.Thread(target=serve_site, args=(shop, rebuild, running.port, log))
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


def without_version(page: str) -> str:
    """Return a page without the number of its build."""
    return re.sub(r'data-version="\d+"', "", page)


def touch(shop: Path) -> None:
    """Save a file without changing its meaning."""
    with (shop / "kb" / "tools.yml").open("a") as file:
        file.write("# saved\n")


def test_a_broken_tree_shows_its_findings_above_its_last_good_page(
    shop: Path, running: Running
) -> None:
    """The faulty line with its mark, then chart and steps; a repair leaves no trace."""
    file, page = shop / "trees" / "horn" / "silent.yml", "/trees/horn/silent.html"
    sound, before = file.read_text(), running.get(page)
    assert "/reload.js" in before

    file.write_text(sound.replace("    minutes: 2\n", "    minutse: 2\n", 1))
    running.until(lambda status: status["errors"] >= 1)
    broken, line = running.get(page), sound[: sound.index("    minutes: 2\n")].count("\n") + 1
    assert f"trees/horn/silent.yml:{line}:5" in broken
    assert f"{line} |     minutse: 2\n       |     ^^^^^^^" in broken
    chart = before[before.index('<div class="chart-frame">') : before.index('id="fixes"')]
    assert 'id="step-fuse"' in chart
    assert chart in broken
    assert "horn/silent" in running.get("/walks/horn/silent.js")

    file.write_text(sound)
    running.until(lambda status: status["errors"] == 0)
    assert without_version(running.get(page)) == without_version(before)


def test_each_save_has_its_line_in_the_terminal(shop: Path, running: Running) -> None:
    """When it was, how long it took, how many findings, and each of these in one line."""
    file = shop / "trees" / "horn" / "silent.yml"
    file.write_text(file.read_text().replace("    minutes: 2\n", "    minutse: 2\n", 1))
    running.until(lambda status: status["errors"] >= 1)
    first, *findings = running.printed[-1].split("\n")
    assert re.fullmatch(r"[0-2]\d:[0-5]\d:[0-5]\d  \d+\.\d\d s  1 error, \d+ warnings", first)
    assert len(findings) == sum(int(number) for number in re.findall(r"\d+(?= [ew])", first))
    assert all(re.match(r"  [\w./-]+:\d+:\d+: (error|warning): ", line) for line in findings)
    assert any("trees/horn/silent.yml:" in line and "`minutse`" in line for line in findings)


def test_an_old_address_leads_to_the_renamed_tree(shop: Path, running: Running) -> None:
    """Also after a second new name, and to the tree itself once it has its old name back."""
    old, page = shop / "trees" / "horn" / "silent.yml", "/trees/horn/silent.html"
    for name in ("weak", "weak-at-times"):
        before = running.status()["version"]
        next((shop / "trees" / "horn").iterdir()).rename(old.with_name(f"{name}.yml"))
        running.until(lambda status, then=before: status["version"] > then)
        with urllib.request.urlopen(running.address + page, timeout=30) as answer:
            assert answer.url == f"{running.address}/trees/horn/{name}.html"
            assert "Horn is silent" in answer.read().decode()
    before = running.status()["version"]
    old.with_name("weak-at-times.yml").rename(old)
    running.until(lambda status: status["version"] > before)
    with urllib.request.urlopen(running.address + page, timeout=30) as answer:
        assert answer.url == running.address + page


def test_a_page_is_answered_when_there_is_news(shop: Path, running: Running) -> None:
    """An open page hears of a save at once: it needn't ask again and again."""
    status = running.status()
    touch(shop)
    news = json.loads(running.get(f"/changed?seen={status['news']}"))
    assert news["version"] == status["version"] + 1


def test_a_page_that_fails_is_told_once(
    shop: Path, running: Running, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A bug of ours in one page says so there and in the terminal, and all others are shown."""
    fails = "builder.site.rendered_shop.tree_with_script"
    monkeypatch.setattr(fails, lambda *_: {}["wheel"])
    for _ in range(2):
        with pytest.raises(urllib.error.HTTPError) as error:
            running.get("/trees/horn/silent.html")
        assert error.value.code == 500
        assert "KeyError: &#x27;wheel&#x27;" in error.value.read().decode()
    assert "Horn is silent" in running.get("/index.html")
    assert ["KeyError" in line for line in running.printed] == [False, False, True]


def test_a_build_that_fails_leaves_the_last_site(shop: Path, running: Running) -> None:
    """Pages and the terminal show the error, and the next save recovers."""
    before = running.status()
    running.fails.append(KeyError("wheel"))
    touch(shop)
    status = running.until(lambda status: status["trouble"])
    assert status["version"] == before["version"]
    assert "Horn is silent" in running.get("/trees/horn/silent.html")
    assert running.printed[2:] == [status["trouble"]]
    assert "KeyError: 'wheel'" in status["trouble"]
    assert "\n" not in status["trouble"]

    touch(shop)
    status = running.until(lambda status: not status["trouble"])
    assert status["version"] == before["version"] + 1


def test_a_first_build_that_fails_has_a_page(shop: Path, start: Start) -> None:
    """The page says why there's no site, as text, and opens the site when it's ready."""
    running = start(OSError("the disk is <full>"))
    with pytest.raises(urllib.error.HTTPError) as error:
        running.get("/trees/horn/silent.html")
    page = error.value.read().decode()
    assert error.value.code == 503
    assert "the disk is &lt;full&gt;" in page
    assert "/reload.js" in page
    touch(shop)
    running.until(lambda status: not status["trouble"])
    assert "Horn is silent" in running.get("/trees/horn/silent.html")


def test_an_open_page_shows_an_error_and_reloads(
    shop: Path, running: Running, chromium: Browser
) -> None:
    """A banner shows while the build fails, and the new page afterwards."""
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
    before = running.status()["version"]
    trees.rename(away)
    running.until(lambda status: status["version"] > before or status["trouble"])
    away.rename(trees)
    running.until(lambda _: '"trees/horn/silent.html"' in running.get("/index.html"))
    tree = trees / "horn" / "silent.yml"
    tree.write_text(tree.read_text().replace("title: Horn is silent", "title: Horn is weak"))
    running.until(lambda _: "Horn is weak" in running.get("/trees/horn/silent.html"))


LOCAL_NAMES = ("localhost", "LOCALHOST:8000", "127.0.0.1", "127.0.0.1:1", "[::1]", "[::1]:65535")
OTHER_NAMES = ("elsewhere.example", "localhost.elsewhere.example", "127.0.0.1.elsewhere.example",
               "127.0.0.2", "[::2]", "localhost:x", "localhost:8000@elsewhere", "")  # fmt: skip


def asked_as(running: Running, *hosts: str, method: str = "GET", path: str = "/") -> int:
    """Send a request with these `Host` headers; return the status."""
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
    """A web page whose own name resolves to this machine can read nothing."""
    assert {name: asked_as(running, name) for name in LOCAL_NAMES} == dict.fromkeys(
        LOCAL_NAMES, 200
    )
    for path in ("/", "/changed", "/reload.js", "/nowhere"):
        for method in ("GET", "HEAD"):
            for name in OTHER_NAMES:
                assert asked_as(running, name, method=method, path=path) == 403, (path, name)
    assert asked_as(running) == 403
    assert asked_as(running, "localhost", "elsewhere.example") == 403


def test_odd_addresses_are_not_found(running: Running) -> None:
    """No folder is listed, nothing outside the site is served, the terminal stays silent."""
    for path in ("/assets/", "/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "/%00", "/%00.html",
                 "/x" * 2000, "//[", "/%ff.html", "/index.html/x.html"):  # fmt: skip
        for method in ("GET", "HEAD"):
            assert asked_as(running, "localhost", method=method, path=path) == 404, path
    assert len(running.printed) == 2


def answering() -> int:
    """Count the requests in progress."""
    return sum("process_request_thread" in one.name for one in threading.enumerate())


@pytest.fixture
def flood(running: Running) -> Iterator[list[socket.socket]]:
    """Open many more connections than allowed, without a request on them."""
    lines = [
        socket.create_connection(("127.0.0.1", running.port)) for _ in range(5 * MAX_CONNECTIONS)
    ]
    lines[-1].settimeout(PATIENCE)
    lines[-1].recv(1)  # the last one is refused after all others were handled
    yield lines
    for line in lines:
        line.close()


def test_a_flood_of_connections_ends_nothing(running: Running, flood: list[socket.socket]) -> None:
    """There are never more threads than allowed connections; after the flood, pages are back."""
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
    assert len(running.printed) == 2


def test_a_browser_may_hang_up(running: Running) -> None:
    """A connection that closes early prints nothing."""
    for _ in range(50):
        with socket.create_connection(("127.0.0.1", running.port)) as line:
            line.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, b"\1\0\0\0\0\0\0\0")
            line.sendall(b"GET /assets/search-data.js HTTP/1.0\r\nHost: localhost\r\n\r\n")
    assert "Horn is silent" in running.get("/trees/horn/silent.html")
    assert len(running.printed) == 2


@pytest.mark.parametrize("port", [70_000, -1])
def test_a_port_out_of_range_names_the_option(shop: Path, port: int) -> None:
    """The message says what to write instead."""
    with pytest.raises(OSError, match="--port"):
        serve_site(shop, lambda _: 0, port)


def test_a_port_in_use_names_the_option(shop: Path, running: Running) -> None:
    """A second server on the same port ends before it builds anything."""
    with pytest.raises(OSError, match=rf"port {running.port} .*--port"):
        serve_site(shop, lambda _: pytest.fail("built"), running.port)


def test_a_bad_port_exits_with_2_and_names_the_option(
    shop: Path, running: Running, capsys: pytest.CaptureFixture[str]
) -> None:
    """A port in use or out of range gets a message, no traceback."""
    serve_at = ["--shop", str(shop), "serve", "--port"]
    assert main([*serve_at, str(running.port)]) == 2
    assert "give another with --port" in capsys.readouterr().err
    for port in ("99999", "-1", "eighty"):
        with pytest.raises(SystemExit) as end:
            main([*serve_at, port])
        assert end.value.code == 2
        assert "--port" in capsys.readouterr().err


def test_an_interrupt_in_a_build_is_a_clean_end(shop: Path) -> None:
    """Ctrl+C during a build ends the server silently."""

    def interrupted(_: Path) -> int:
        raise KeyboardInterrupt

    assert serve_site(shop, interrupted, free_port(), lambda line: pytest.fail(line)) is None
