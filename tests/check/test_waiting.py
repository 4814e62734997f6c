"""One mistake in `kb/` or in a step looks like one, and what may follow from it waits."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from builder.cache.database import temporary
from builder.check.dependencies import ALL
from builder.check.verdict import Verdict, check
from builder.check.waiting import doubtful_entries, in_kinds_followed, rests_on, waits
from builder.model.finding import Finding, Severity
from builder.model.text import Position

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


@pytest.mark.parametrize(
    ("used", "doubtful", "rests"),
    [
        (("tools", "meter"), ("tools", "meter"), True),
        (("tools", "meter"), ("tools", "clamp"), False),
        (("tools", "meter"), ("lamps", "meter"), False),
        (("tools", ALL), ("tools", "meter"), True),  # a rule went through all of them
        (("tools", "meter"), ("tools", ALL), True),  # nobody knows which of them is wrong
        (("tools", "meter"), ("lamps", ALL), False),
    ],
)
def test_a_tree_waits_for_what_its_rules_looked_up(
    used: tuple[str, str], doubtful: tuple[str, str], rests: bool
) -> None:
    """For that entry, or for its whole file; a mistake in another entry holds nothing back."""
    assert rests_on([used], [doubtful]) is rests


def at(file: str, rule: str = "unused-value", severity: Severity = Severity.ERROR) -> Finding:
    """Make a finding in a file."""
    return Finding(rule, severity, Position(file, 1, 1, 1, 2), "")


def test_what_is_wrong_in_the_shop_waits_for_a_mistake_in_its_knowledge() -> None:
    """A warning or a mistake in a tree holds nothing back; a rule on trees alone never waits."""
    tools, tree = at("kb/tools.yml"), at("trees/horn/silent.yml")
    warning = at("kb/tools.yml", severity=Severity.WARNING)
    assert waits(at("kb/lamps.yml"), (warning, tree, tools), ())
    assert not waits(at("kb/lamps.yml"), (warning, tree), ())
    assert not waits(at("trees/horn/silent.yml", "no-such-tree"), (tools,), ())


def test_a_procedure_waits_for_the_states_that_it_needs() -> None:
    """Whatever the rule; other doubt in the knowledge is none about a procedure's states."""
    states, tools = [("conditions", "key-on")], [("tools", "meter")]
    assert waits(at("kb/procedures/first-stop.yml"), (), states)
    assert not waits(at("kb/procedures/first-stop.yml"), (), tools)
    assert not waits(at("trees/horn/silent.yml"), (), states)


def test_the_entry_in_which_a_mistake_stands_is_in_doubt(tmp_path: Path) -> None:
    """It's the last key at or above the mistake; of a file that is gone, all entries are."""
    (tmp_path / "kb").mkdir()
    (tmp_path / "kb/tools.yml").write_text("clamp: {}\nmeter:\n  nmae: Meter\nlamp: {}\n")
    for line, key in ((1, "clamp"), (3, "meter")):
        mistake = Finding("schema", Severity.ERROR, Position("kb/tools.yml", line, 3, line, 7), "")
        assert doubtful_entries(tmp_path, [mistake]) == {("tools", key)}
    assert doubtful_entries(tmp_path, [at("kb/lamps.yml")]) == {("lamps", ALL)}
    warning = at("kb/tools.yml", severity=Severity.WARNING)
    assert doubtful_entries(tmp_path, [warning, at("trees/horn/silent.yml")]) == set()


def moved(folder: Path, file: str, to: str) -> Verdict:
    """Check a copy of the shop in which one file has another name."""
    shop = folder / "shop"
    shutil.copytree(SHOP, shop)
    (shop / file).rename(shop / to)
    with temporary() as cache:
        return check(shop, cache, TODAY)


@pytest.mark.parametrize(
    ("file", "to"),
    [
        ("trees/charging/voltage-high.yml", "trees/charging/voltage-high.yml.txt"),
        ("kb/modules/steering-unit.yml", "kb/modules/steering_unit.yml"),
        ("kb/procedures/first-stop.yml", "trees/horn/first-stop.yml"),
        ("trees/horn/silent.yml", "kb/procedures/silent.yml"),
    ],
)
def test_a_file_with_a_wrong_name_is_one_finding(tmp_path: Path, file: str, to: str) -> None:
    """It stands at the file that was moved, never at those that name it rightly."""
    verdict = moved(tmp_path, file, to)
    assert [(one.rule, one.at.file) for one in verdict.findings] == [("file-name", to)]


def test_a_word_of_everyday_speech_is_one_finding(tmp_path: Path) -> None:
    """The line that calls it slang is what is wrong, and not every place that has it."""
    verdict = broken(tmp_path, "kb/words.yml", "\n", "\nthe: that\n")
    assert [(one.rule, one.at.file) for one in verdict.findings] == [("slang", "kb/words.yml")]
    assert len(verdict.waiting) > 20


def test_a_new_name_in_one_place_is_one_finding(tmp_path: Path) -> None:
    """It stands where the name is new, and not at every place that has the old one."""
    verdict = broken(tmp_path, "kb/tools.yml", "multimeter:", "multi-meter:")
    assert [(one.rule, one.at.file) for one in verdict.findings] == [
        ("no-such-tool", "kb/tools.yml")
    ]
    assert len(verdict.waiting) > 1


def test_a_file_of_its_own_is_one_entry(tmp_path: Path) -> None:
    """Its kind is the folder, by the name that lookups have."""
    files = [at("kb/procedures/first-stop.yml"), at("kb/how-to/voltage-drop.md")]
    entries = {("procedures", "first-stop"), ("how_tos", "voltage-drop")}
    assert doubtful_entries(tmp_path, files) == entries


def test_what_rules_compute_on_holds_back_more() -> None:
    """A state or a procedure that a rule refuses; a lamp or a tree leads to no other finding."""
    followed = [at("kb/conditions.yml"), at("kb/procedures/first-stop.yml")]
    others = [at("kb/lamps.yml"), at("trees/horn/silent.yml")]
    assert list(in_kinds_followed([*others, *followed])) == followed
