"""A new tree passes the checks as created, in any system, and overwrites no other."""

import re
from datetime import date
from pathlib import Path

import pytest

from builder.authoring.new_shop import new_shop
from builder.authoring.new_tree import filled_template, new_tree
from builder.authoring.not_written import NotWritten
from builder.check.unchecked_library import read_library
from builder.model.finding import Finding
from builder.model.tree import Tree
from builder.reader.trees import read_tree
from builder.rules.shared.judge import judge, judge_library
from builder.rules.template_text import TEMPLATE_TEXTS

COMMENTED = {"What you tell the customer, in plain words."}  # no text until it's uncommented
TODAY = date(2026, 10, 1)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Create a shop."""
    new_shop(tmp_path)
    return tmp_path


def judged(shop: Path, path: Path) -> tuple[Tree, list[Finding]]:
    """Read a tree; return it with the findings of every rule, its shop's included."""
    tree, findings = read_tree(shop, path)
    library, _ = read_library(shop)
    assert tree is not None
    return tree, [*findings, *judge(tree, library), *judge_library(library, TODAY)]


def test_it_passes_as_created(shop: Path) -> None:
    """It has no findings, not even a warning, before anything is filled in."""
    path = new_tree(shop, "charging/lamp-on-while-driving", TODAY)
    assert path == shop / "trees/charging/lamp-on-while-driving.yml"
    tree, findings = judged(shop, path)
    assert findings == []
    assert (tree.id, tree.title, tree.status, tree.system) == (
        "charging/lamp-on-while-driving", "Lamp on while driving", "draft", "charging",
    )  # fmt: skip
    assert list(tree.symptom.words) == ["charging lamp on while driving"]
    assert tree.written
    assert tree.written.date == "2026-10-01"


def test_it_passes_as_a_ready_tree(shop: Path) -> None:
    """The rules allow a draft more; set to ready, only its own texts are against the template."""
    path = new_tree(shop, "charging/lamp-on", TODAY)
    assert isinstance(path, Path)
    text = path.read_text(encoding="utf-8").replace("status: draft", "status: ready")
    path.write_text(text.replace("# reviewed:", "reviewed:"), encoding="utf-8")
    (left,) = judged(shop, path)[1]
    assert left.rule == "template-text"
    texts = {text for text in TEMPLATE_TEXTS if text in path.read_text(encoding="utf-8")}
    assert len(left.related) + 1 == len(texts - COMMENTED)


def test_every_text_that_counts_as_the_templates_is_in_it() -> None:
    """The rule and the template change together."""
    template = filled_template("charging/lamp-on", TODAY)
    filled_in = {"The title", "words of the customer"}
    assert [text for text in TEMPLATE_TEXTS - filled_in if text not in template] == []


def test_every_commented_key_is_a_key_of_the_format(shop: Path) -> None:
    """Each commented line works as it is, in a shop that has what it names."""
    path = new_tree(shop, "charging/lamp-on", TODAY)
    assert isinstance(path, Path)
    lines = path.read_text(encoding="utf-8").split("\n")
    offered = [line for line in lines if re.match(" +#", line)]
    assert len(offered) >= 8
    uncommented = [line.replace("# ", "", 1) if line in offered else line for line in lines]
    path.write_text("\n".join(uncommented), encoding="utf-8")
    tree, findings = read_tree(shop, path)
    assert not findings
    assert tree is not None
    assert tree.steps["first-fix"].body.parts


def test_several_new_trees_work_together(shop: Path) -> None:
    """Two in one system, and one of the same name in another system."""
    for name in ("charging/lamp-on", "charging/no-charge", "brakes/lamp-on"):
        path = new_tree(shop, name, TODAY)
        assert isinstance(path, Path)
    assert judged(shop, path)[1] == []


def test_it_overwrites_no_tree(shop: Path) -> None:
    """Somebody may be working on the existing one."""
    path = new_tree(shop, "charging/lamp-on", TODAY)
    assert isinstance(path, Path)
    path.write_text("mine")
    refused = new_tree(shop, "charging/lamp-on", TODAY)
    assert isinstance(refused, NotWritten)
    assert "trees/charging/lamp-on.yml" in refused.message
    assert path.read_text() == "mine"
    path.rename(path.with_suffix(".yaml"))
    assert isinstance(new_tree(shop, "charging/lamp-on", TODAY), NotWritten)


@pytest.mark.parametrize(
    ("name", "hint"),
    [
        ("Charging/Lamp On", "charging/lamp-on"),
        ("trees/charging/lamp-on.yml", "charging/lamp-on"),
        ("charging/lamp_on", "charging/lamp-on"),
        ("/charging/lamp-on", "charging/lamp-on"),
        ("charging/lamp-on/", "charging/lamp-on"),
        ("lamp-on", "charging/lamp-on"),
        ("charging/", "charging/lamp-on"),
        ("", "charging/lamp-on"),
        ("../charging/lamp-on", "charging/lamp-on"),
        ("charging/-", "charging/lamp-on"),
    ],
)
def test_a_bad_id_is_refused_with_a_good_one(shop: Path, name: str, hint: str) -> None:
    """Nothing is written, in the shop or outside it."""
    refused = new_tree(shop, name, TODAY)
    assert isinstance(refused, NotWritten)
    assert hint in refused.hint
    assert not list((shop / "trees").rglob("*.yml"))


def test_an_unknown_system_is_refused_with_the_nearest(shop: Path) -> None:
    """The tree would fail the check at once."""
    refused = new_tree(shop, "chargin/lamp-on", TODAY)
    assert isinstance(refused, NotWritten)
    assert "kb/systems.yml" in refused.message
    assert "`charging`" in refused.hint


def test_a_name_too_long_for_its_title_is_refused(shop: Path) -> None:
    """It wouldn't fit the head of the chart."""
    refused = new_tree(shop, "charging/" + "-".join(["lamp"] * 13), TODAY)
    assert isinstance(refused, NotWritten)
    assert "60" in refused.message


def test_a_link_out_of_the_shop_is_refused(shop: Path, tmp_path: Path) -> None:
    """A link in a pull request writes no tree outside the shop."""
    outside = tmp_path.parent / f"{tmp_path.name}-outside"
    outside.mkdir()
    (shop / "trees" / "charging").symlink_to(outside)
    refused = new_tree(shop, "charging/lamp-on", TODAY)
    assert isinstance(refused, NotWritten)
    assert "link" in refused.message
    assert list(outside.iterdir()) == []
