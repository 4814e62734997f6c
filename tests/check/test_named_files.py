"""`baytree check FILE`: only what is wrong there is reported."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from builder.cache.database import temporary
from builder.check.verdict import check
from builder.model.finding import Finding

SHOP = Path(__file__).parents[1] / "shop"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the tests' shop, and break two trees and one file of the knowledge."""
    shop = Path(shutil.copytree(SHOP, tmp_path / "shop"))
    for file in ("trees/horn/silent.yml", "trees/wipers/stop-halfway.yml", "kb/tools.yml"):
        (shop / file).write_text("broken: [", "utf-8")
    (shop / "trees/horn-extra").mkdir()
    shutil.copy(shop / "trees/horn/silent.yml", shop / "trees/horn-extra/silent.yml")
    return shop


def files_with_findings(shop: Path, *names: str) -> set[str]:
    """Return which files are reported."""
    return {finding.at.file for finding in _findings(shop, *names)}


def _findings(shop: Path, *names: str) -> tuple[Finding, ...]:
    with temporary() as cache:
        return check(shop, cache, date(2026, 10, 1), [shop / name for name in names]).findings


def test_a_named_file_alone_is_reported(shop: Path) -> None:
    """Two broken trees, one asked about."""
    assert files_with_findings(shop, "trees/horn/silent.yml") == {"trees/horn/silent.yml"}


def test_what_is_left_out_is_counted(shop: Path) -> None:
    """Whoever asks for one file learns how much else is wrong."""
    with temporary() as cache:
        of_all = check(shop, cache, date(2026, 10, 1))
        of_one = check(shop, cache, date(2026, 10, 1), [shop / "trees/horn/silent.yml"])
    assert of_all.elsewhere == 0
    assert of_one.elsewhere == len(of_all.findings) - len(of_one.findings) > 0


@pytest.mark.parametrize("name", ["trees/horn", "trees/horn/"])
def test_a_named_folder_reports_the_trees_in_it(shop: Path, name: str) -> None:
    """And no tree of a folder whose name only begins like it."""
    assert files_with_findings(shop, name) == {"trees/horn/silent.yml"}


def test_the_folder_of_all_trees_reports_every_tree(shop: Path) -> None:
    """At any depth, and beside a file of the knowledge that is asked about too."""
    found = files_with_findings(shop, "trees", "kb/tools.yml")
    assert found >= {"trees/horn/silent.yml", "trees/wipers/stop-halfway.yml", "kb/tools.yml"}


def test_the_shop_s_own_folder_reports_everything(shop: Path) -> None:
    """`baytree check .` is `baytree check`."""
    assert _findings(shop, ".") == _findings(shop)


def test_a_folder_with_nothing_to_check_is_refused(shop: Path) -> None:
    """Silence there would look like a sound tree."""
    (shop / "prints").mkdir()
    with pytest.raises(FileNotFoundError, match="name a tree's file, or a folder with trees"):
        _findings(shop, "prints")


@pytest.mark.parametrize("name", ["trees/nowhere.yml", "../elsewhere.yml"])
def test_a_file_that_is_not_there_is_refused(shop: Path, name: str) -> None:
    """A slip in the name, and a file of another shop."""
    (shop.parent / "elsewhere.yml").touch()
    with pytest.raises(FileNotFoundError, match=r"doesn't exist|isn't in the shop"):
        _findings(shop, name)
