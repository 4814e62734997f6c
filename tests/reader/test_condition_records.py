"""Mistakes of text in `kb/conditions.yml`: each on its line and column, and nothing made of it."""

from datetime import date
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.conditions import CountsAs, Takes
from builder.model.finding import Finding
from builder.reader.knowledge_files import read_knowledge
from builder.rules.shared.judge import judge_library

TODAY = date(2026, 10, 1)

FILE = "kb/conditions.yml"
KEY = "key-off:\n  group: power\n  normal: yes\n  text: key off\n  enter: Turn the key off\n"
# What is written under a condition, the rule, the line and column, and what the message names.
SLIPS = {
    "an unknown key": ("  gruop: power", "unknown-key", 8, 3, "`group`"),
    "a key of steps": ("  when: [key-on]", "unknown-key", 8, 3, "`when`"),
    "a word that isn't yes": ("  normal: maybe", "bad-value", 8, 11, "`yes`"),
    "an unknown kind": ("  takes: parts", "bad-value", 8, 10, "`part`"),
    "an unknown use": ("  counts_as: loads", "bad-value", 8, 14, "`load`"),
    "a deed that is none": ("  does: [hold-suply]", "bad-value", 8, 10, "`hold-supply`"),
    "a deed of steps": ("  does: [clear-codes]", "bad-value", 8, 10, "disconnect-battery"),
    "a deed without a list": ("  undo_does: connect-battery", "wrong-type", 8, 14, "list"),
    "minutes in words": ("  minutes: four", "bad-value", 8, 12, "`four`"),
    "a wait below zero": ("  wait: -1", "bad-value", 8, 9, "`-1`"),
    "hazards without a list": ("  hazards: road-test", "wrong-type", 8, 12, "list"),
    "a map for a line": (
        "  undo: {a: b}",
        "wrong-type",
        8,
        3,
        "a line of text, or a list of lines",
    ),
    "a map in the lines": (
        "  undo: [{a: b}]",
        "wrong-type",
        8,
        11,
        '`"a: b"`',
    ),
    "nothing after a key": ("  undo:", "missing-key", 8, 3, "`undo`"),
    "no states at all": ("  excludes: []", "bad-value", 8, 3, "list"),
    "a line as long as a page": (f"  undo: {'x' * 300}", "wrong-type", 8, 9, "line"),
}


def found_in(shop: Path, text: str) -> list[Finding]:
    """Write the conditions and return what is found in them, by the reader and the rules."""
    (shop / FILE).write_text(text, "utf-8")
    library, findings = read_library(shop)
    every = (*findings, *judge_library(library, TODAY))
    return [one for one in every if one.at.file == FILE]


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_found_on_its_line_and_column(slip: str, shop: Path) -> None:
    """One finding, where the author looks, with what to write instead."""
    line, rule, number, column, named = SLIPS[slip]
    text = f"{KEY}key-on:\n  text: key on\n{line}\n  enter: Turn the key on\n  also_say: power\n"
    (found,) = found_in(shop, text)
    assert (found.rule, found.at.line, found.at.column) == (rule, number, column)
    assert named in f"{found.message} {found.hint}"
    assert found.why
    assert found.hint


def test_a_condition_with_a_mistake_is_still_there_to_be_named(shop: Path) -> None:
    """One slip is told once, and not again at every condition that names this one."""
    found = found_in(shop, KEY.replace("enter:", "entr:") + (
        "support:\n  text: support on\n  enter: Connect it\n  undo: Take it off\n"
        "  changed_with: [key-off]\n"
    ))  # fmt: skip
    assert [(one.rule, one.at.line) for one in found] == [("unknown-key", 5)]


@pytest.mark.parametrize("text", ["key-off", "- key-off", "key-off: 5", "key-off: [a]", "{}", ""])
def test_what_holds_no_conditions_makes_none(text: str, shop: Path) -> None:
    """Rubbish is told, and nothing but the names is kept of it; an empty file says nothing."""
    found = found_in(shop, text)
    assert bool(found) == (text != "")
    assert all(not one.group for one in read_knowledge(shop)[0].conditions.values())


def test_a_line_that_is_too_long_is_told(shop: Path) -> None:
    """As one line and in a list; it stays readable on a phone."""
    line = "Turn the key off " + "and on again " * 6
    text = KEY.replace("Turn the key off", line) + f"  undo:\n    - Wait\n    - {line}\n"
    found = [(one.rule, one.at.line) for one in found_in(shop, text)]
    assert found == [("too-long", 5), ("too-long", 8)]


def test_every_word_is_read(shop: Path) -> None:
    """Lines as a list or one line, closed lists as their words, numbers exact."""
    conditions = read_knowledge(shop)[0].conditions
    battery, load = conditions["battery-disconnected"], conditions["loaded"]
    assert (battery.group, battery.normal, len(battery.enter), len(battery.undo)) == (
        "power", False, 4, 2,
    )  # fmt: skip
    assert (battery.minutes, battery.wait, battery.counts_as) == (5, 5, CountsAs.POWER_OFF)
    assert [one.verb for one in (*battery.does, *battery.undo_does)] == [
        "disconnect-battery", "connect-battery",
    ]  # fmt: skip
    assert (load.group, load.takes, load.counts_as) == (None, Takes.CURRENT, CountsAs.LOAD)
    assert load.undo == ("Remove the <current> load",)
    assert conditions["key-off"].normal
    assert conditions["unplugged"].also_say == "power"
    assert not any(one.broken for one in conditions.values())
