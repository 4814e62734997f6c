"""Every scalar is text; it becomes a number only where a number is wanted."""

import pytest
import yaml

from builder.model.checks import Check
from builder.model.finding import Finding
from builder.model.text import Text
from builder.model.tree import Tree
from builder.reader.nodes import Map
from builder.reader.source import Source
from builder.reader.trees import tree_from
from builder.reader.yaml_text import read_yaml

# The text in the file, and the text it must stay. Forty traps of YAML 1.1 and 1.2.
KEPT = [
    ("yes", "yes"), ("no", "no"), ("on", "on"), ("off", "off"), ("Yes", "Yes"), ("NO", "NO"),
    ("y", "y"), ("n", "n"), ("true", "true"), ("False", "False"), ("null", "null"), ("~", "~"),
    ("Null", "Null"), ("012", "012"), ("08", "08"), ("0133", "0133"), ("0x87", "0x87"),
    ("0o17", "0o17"), ("0b101", "0b101"), ("1e3", "1e3"), ("1E3", "1E3"), ("12:30", "12:30"),
    ("1:30:00", "1:30:00"), ("1_000", "1_000"), ("+5", "+5"), ("-5", "-5"), ("5.", "5."),
    (".5", ".5"), (".inf", ".inf"), (".nan", ".nan"), ("2026-03-02", "2026-03-02"),
    ("2026-03-02T10:00:00Z", "2026-03-02T10:00:00Z"), ("12.50", "12.50"), ("1.10", "1.10"),
    ("<<", "<<"), ("=", "="), ("'it''s'", "it's"), ('"tab\\tstop"', "tab\tstop"),
    ("C0031", "C0031"), ("5E10", "5E10"), ("front left", "front left"), ("a  b", "a  b"),
]  # fmt: skip


@pytest.mark.parametrize(("written", "kept"), KEPT, ids=[written for written, _ in KEPT])
def test_a_scalar_stays_as_written(written: str, kept: str) -> None:
    """`no` is an answer, `0133` a code and `12:30` a time of day: never something else."""
    root, findings = read_yaml(Source("trees/a/b.yml", f"key: {written}\n", ""))
    assert findings == []
    assert isinstance(root, Map)
    assert root == {"key": kept}


def test_pyyaml_itself_would_have_changed_them() -> None:
    """The table is worth its lines: the plain loader of PyYAML turns these into something else."""
    assert yaml.safe_load("key: no") == {"key": False}
    assert yaml.safe_load("key: 0133") == {"key": 91}
    assert yaml.safe_load("key: 12:30") == {"key": 750}


NUMBERS = [("4", True), ("0.5", True), ("0", True), ("12.50", True), ("1e3", False),
           ("012", False), ("4,5", False), ("four", False), ("-1", False), (".5", False),
           ("0x10", False), ("'7'", True), ("1_000", False), ("yes", False)]  # fmt: skip


@pytest.mark.parametrize(("written", "taken"), NUMBERS, ids=[written for written, _ in NUMBERS])
def test_a_number_is_a_plain_decimal(written: str, taken: bool) -> None:
    """`minutes` takes a plain decimal; anything else is reported."""
    tree, findings = one_check(f"    minutes: {written}\n")
    assert (findings == ()) is taken
    assert tree is not None
    if taken:
        assert str(tree.start.minutes) == written.strip("'")


def test_a_value_knows_its_place() -> None:
    """File, line and column lead to the character."""
    tree, _ = one_check("    minutes: 12\n")
    assert tree is not None
    assert tree.start.minutes is not None
    assert tree.start.minutes.at == ("trees/a/b.yml", 9, 14, 9, 16)
    body = tree.start.body
    assert isinstance(body, Check)
    assert body.results[0].text == Text("no")
    assert body.results[0].text.at[1:3] == (11, 18)


def one_check(more: str) -> tuple[Tree | None, tuple[Finding, ...]]:
    """Make a tree of one check, with more words in it."""
    text = (
        "format: 2\ntitle: A tree\nstatus: ready\nsystem: charging\n"
        "symptom: {words: [battery light on]}\nsteps:\n  running:\n    check: Lamp lit\n"
        f"{more}    results:\n      - {{result: no, branch: end}}\n"
        "  end:\n    stop: Done\n    kind: not-found\n"
    )
    return tree_from(Source("trees/a/b.yml", text, ""))
