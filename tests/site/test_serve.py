"""The site while an author is at work."""

import json
import socket
import threading
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path

import pytest

from builder.check.library import read_library
from builder.site.serve import serve

from .conftest import build_shop


def get(address: str) -> str:
    """Fetch a page of the local server."""
    with urllib.request.urlopen(address, timeout=30) as answer:
        return str(answer.read().decode())


def rebuild_of(shop: Path) -> Callable[[Path], int]:
    """Return the build that an author sees: with findings in place of broken pages."""

    def rebuild(out: Path) -> int:
        _, findings = read_library(shop)
        build_shop(shop, out, cache="serve", findings=findings)
        return len(findings)

    return rebuild


@pytest.fixture
def address(shop: Path) -> str:
    """Serve the test shop and return where."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    ready = threading.Event()
    threading.Thread(
        target=serve, args=(shop, rebuild_of(shop), port, lambda _: ready.set()), daemon=True
    ).start()
    assert ready.wait(60)
    return f"http://127.0.0.1:{port}"


def next_build(address: str, version: int) -> dict[str, int]:
    """Wait for the build after the given one, as a page does."""
    until = time.monotonic() + 60
    while time.monotonic() < until:
        news = json.loads(get(f"{address}/changed?since={version}"))
        if news["version"] > version:
            return news
    raise AssertionError("no new build")


def test_a_broken_tree_shows_its_findings_and_comes_back(shop: Path, address: str) -> None:
    """While a tree is broken its page shows what is wrong, at which line; mended, it is back."""
    file = shop / "trees" / "horn" / "silent.yml"
    sound = file.read_text()
    page = f"{address}/trees/horn/silent.html"
    assert "Horn is silent" in get(page)
    assert "/reload.js" in get(page)

    file.write_text(sound.replace("    minutes: 2\n", "    minutse: 2\n", 1))
    broken = next_build(address, 1)
    assert broken["errors"] >= 1
    shown = get(page)
    assert "trees/horn/silent.yml:" in shown
    assert "minutse" in shown

    file.write_text(sound)
    assert next_build(address, broken["version"])["errors"] == 0
    assert 'id="step-fuse"' in get(page)
