"""A new procedure has one finding, that nothing runs it; it overwrites no other."""

from datetime import date
from pathlib import Path

import pytest

from builder.authoring.new_procedure import new_procedure
from builder.authoring.new_shop import new_shop
from builder.authoring.not_written import NotWritten
from builder.check.unchecked_library import read_library
from builder.model.finding import Severity
from builder.rules.shared.judge import judge_library

TODAY = date(2026, 10, 1)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Create a shop."""
    new_shop(tmp_path)
    return tmp_path


def test_it_only_waits_for_a_tree_that_runs_it(shop: Path) -> None:
    """Every other rule takes it as created, and nothing stops a build."""
    path = new_procedure(shop, "power-and-ground", TODAY)
    assert path == shop / "kb/procedures/power-and-ground.yml"
    library, mistakes = read_library(shop)
    findings = [*mistakes, *judge_library(library, TODAY)]
    assert [finding.rule for finding in findings] == ["unused-procedure"]
    assert findings[0].severity is Severity.WARNING
    procedure = library.procedures["power-and-ground"]
    assert procedure.tree.title == "Power and ground"
    assert "written: {by: your name, date: 2026-10-01}" in path.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("name", "hint"),
    [("Power and Ground", "`power-and-ground`"), ("a/b", "`a-b`"), ("???", "power-and-ground")],
)
def test_a_name_that_cannot_be_is_put_right(shop: Path, name: str, hint: str) -> None:
    """The name is part of an address."""
    refused = new_procedure(shop, name, TODAY)
    assert isinstance(refused, NotWritten)
    assert hint in refused.hint


def test_nothing_is_overwritten(shop: Path) -> None:
    """Whoever wrote the file keeps it."""
    path = new_procedure(shop, "feed", TODAY)
    assert isinstance(path, Path)
    path.write_text("mine", encoding="utf-8")
    assert isinstance(new_procedure(shop, "feed", TODAY), NotWritten)
    assert path.read_text(encoding="utf-8") == "mine"


def test_a_long_name_is_refused(shop: Path) -> None:
    """It becomes the title, which must fit the chart."""
    assert isinstance(new_procedure(shop, "x" * 61, TODAY), NotWritten)
