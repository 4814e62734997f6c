"""Firefox opens the site from a folder: home, a tree, a walk, and a job that is kept."""

import os
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from .firefox import Firefox, started

STEP = "return document.querySelector('[data-step]:not([hidden])')?.dataset.step"
PRESS = "document.querySelector('[data-do=\"{}\"]').click()"


@pytest.fixture(scope="module")
def firefox(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Firefox]:
    """Start Firefox; tests that need it are skipped where it is missing."""
    program = os.environ.get("FIREFOX") or shutil.which("firefox-esr") or shutil.which("firefox")
    if not program:
        pytest.skip("no Firefox on this machine; set FIREFOX to where it is")
    with started(program, tmp_path_factory.mktemp("firefox") / "profile") as running:
        yield running


def test_home_finds_a_tree(firefox: Firefox, whole: Path) -> None:
    """A symptom typed on the home page lists its tree, without an error."""
    firefox.open(whole / "index.html")
    firefox.run(
        "const box = document.querySelector('input[type=search]'); box.value = 'battery lamp';"
        "box.dispatchEvent(new Event('input', { bubbles: true }));"
    )
    firefox.wait_for("return Boolean(document.querySelector('a[href*=\"battery-lamp\"]'))")
    assert firefox.errors() == []


def test_a_walk_goes_from_step_to_step(firefox: Firefox, whole: Path) -> None:
    """Start, a reading, its result: the next step is shown, and its address finds the job again."""
    page = whole / "trees/charging/battery-lamp.html"
    firefox.open(page)
    firefox.run(PRESS.format("start"))
    firefox.wait_for(STEP)
    firefox.open(page, "#walk/rest")
    firefox.wait_for(STEP)
    ready = (
        "const go = document.querySelector('[data-do=\"acknowledge\"]'); go?.click(); return !go"
    )
    firefox.wait_for(ready)
    firefox.run(
        "const box = document.querySelector('input[data-reading]'); box.value = '12,6';"
        "box.dispatchEvent(new Event('input', { bubbles: true }));"
    )
    firefox.run(PRESS.format("confirm"))
    firefox.wait_for(f"{STEP} === 'running'")
    firefox.open(page, firefox.run("return location.hash"))
    firefox.wait_for(f"{STEP} === 'running'")
    assert firefox.errors() == []
