"""A new file of the knowledge is no error, waits for what uses it, and overwrites no other."""

from datetime import date
from pathlib import Path

import pytest

from builder.authoring.new_entry import ENTRY_KINDS, new_entry
from builder.authoring.new_shop import new_shop
from builder.authoring.not_written import NotWritten
from builder.check.unchecked_library import read_library
from builder.commands.new import KINDS
from builder.model.finding import Severity
from builder.rules.shared.judge import judge_library

TODAY = date(2026, 10, 1)
# What the check says until something uses it, or until it is reviewed.
WAITS_FOR = {
    "procedure": ["unused-procedure"],
    "module": [],
    "vehicle": [],
    "how-to": ["review-too-old", "unused-article"],
    "state": [],
    "case": [],
}


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Create a shop with examples."""
    new_shop(tmp_path, with_examples=True)
    return tmp_path


def test_the_command_offers_every_kind() -> None:
    """A template that no command writes helps nobody."""
    assert set(KINDS) == {"tree", *ENTRY_KINDS}


@pytest.mark.parametrize("what", ENTRY_KINDS)
def test_it_is_no_error_as_created(shop: Path, what: str) -> None:
    """Every rule takes it, or only warns that nothing uses it yet, and nothing stops a build."""
    path = new_entry(shop, what, ENTRY_KINDS[what].example, TODAY)
    assert isinstance(path, Path)
    library, mistakes = read_library(shop)
    findings = [*mistakes, *judge_library(library, TODAY)]
    assert sorted(finding.rule for finding in findings) == WAITS_FOR[what]
    assert all(finding.severity is Severity.WARNING for finding in findings)
    text = path.read_text(encoding="utf-8")
    assert "2026-10-01" in text or what == "state"
    assert "The title" not in text


def test_its_name_becomes_its_title(shop: Path) -> None:
    """Nobody types it twice."""
    new_entry(shop, "procedure", "power-and-ground", TODAY)
    new_entry(shop, "how-to", "voltage-drop", TODAY)
    new_entry(shop, "module", "radio", TODAY)
    library, _ = read_library(shop)
    assert library.procedures["power-and-ground"].tree.title == "Power and ground"
    assert library.how_tos["voltage-drop"].title == "Voltage drop"
    assert library.modules["radio"].name == "Radio"


@pytest.mark.parametrize("what", ["module", "vehicle", "case"])
def test_every_commented_line_can_be_used(shop: Path, what: str) -> None:
    """Each word in a comment is a word of the format, with a value that fits."""
    path = new_entry(shop, what, ENTRY_KINDS[what].example, TODAY)
    assert isinstance(path, Path)
    head, *lines = path.read_text(encoding="utf-8").split("\n")
    offered = [line for line in lines if line.lstrip(" ").startswith("# ") and ":" in line]
    assert len(offered) >= 4
    used = [line.replace("# ", "", 1) if line in offered else line for line in lines]
    twice = [line for line in used if line.startswith(("  program: not", "# "))]
    path.write_text("\n".join([head, *(one for one in used if one not in twice)]), "utf-8")
    _, mistakes = read_library(shop)
    assert [(one.rule, one.message) for one in mistakes] == []


def test_a_job_needs_a_tree_that_it_followed(tmp_path: Path) -> None:
    """A case without a tree would be an error at once."""
    new_shop(tmp_path)
    refused = new_entry(tmp_path, "case", "2026-0001", TODAY)
    assert isinstance(refused, NotWritten)
    assert "baytree new tree" in refused.hint


@pytest.mark.parametrize(
    ("name", "hint"),
    [("Power and Ground", "`power-and-ground`"), ("a/b.yml", "`a-b`"), ("???", "power-and-ground")],
)
def test_a_name_that_cannot_be_is_put_right(shop: Path, name: str, hint: str) -> None:
    """The name is part of an address."""
    refused = new_entry(shop, "procedure", name, TODAY)
    assert isinstance(refused, NotWritten)
    assert hint in refused.hint


@pytest.mark.parametrize("what", ENTRY_KINDS)
def test_no_entry_is_overwritten(shop: Path, what: str) -> None:
    """The author of the file keeps it."""
    path = new_entry(shop, what, "mine", TODAY)
    assert isinstance(path, Path)
    path.write_text("mine", encoding="utf-8")
    assert isinstance(new_entry(shop, what, "mine", TODAY), NotWritten)
    assert path.read_text(encoding="utf-8") == "mine"


def test_a_long_name_is_refused(shop: Path) -> None:
    """It becomes the title, which must fit the chart."""
    assert isinstance(new_entry(shop, "procedure", "x" * 61, TODAY), NotWritten)
