"""One mistake in `kb/` or in a step looks like one, and what may follow from it waits."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from builder.cache.database import temporary
from builder.check.verdict import Verdict, check

SHOP = Path(__file__).parents[1] / "shop"
TODAY = date(2026, 10, 1)


def broken(folder: Path, file: str, right: str, wrong: str) -> Verdict:
    """Check a copy of the shop in which one thing is wrong."""
    shop = folder / "shop"
    shutil.copytree(SHOP, shop)
    text = (shop / file).read_text("utf-8")
    assert right in text
    (shop / file).write_text(text.replace(right, wrong, 1), "utf-8")
    with temporary() as cache:
        return check(shop, cache, TODAY)


@pytest.mark.parametrize(
    ("file", "right", "wrong"),
    [
        ("kb/tools.yml", "  name: Multimeter", "  nmae: Multimeter"),
        ("kb/systems.yml", "horn: {name: Horn}", "horn: Horn"),
        ("kb/how-to/voltage-drop.md", "2026-07-20}\n---\n", "2026-07-20}\n"),
        ("kb/conditions.yml", "key-on:\n", "key-on:\n  when: x\n"),
        ("trees/charging/voltage-high.yml", "\nsteps:\n", "\nstep:\n"),
        ("trees/fuel/smell.yml", "    check:", "    chekc:"),
    ],
)
def test_one_mistake_is_one_finding(tmp_path: Path, file: str, right: str, wrong: str) -> None:
    """It is the only one shown, at its own place; the trees that name the entry stay silent."""
    verdict = broken(tmp_path, file, right, wrong)
    assert [one.at.file for one in verdict.findings] == [file]


def test_what_waits_is_known(tmp_path: Path) -> None:
    """The report can say how many there are, and a page can keep its last good state."""
    verdict = broken(tmp_path, "kb/tools.yml", "  name: Multimeter", "  nmae: Multimeter")
    assert {one.rule for one in verdict.waiting} == {"no-such-tool"}
    assert not set(verdict.findings) & set(verdict.waiting)
