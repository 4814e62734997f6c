"""Mistakes of text, each in a file of its own under `cases/<rule>/`.

A comment `# <- rule, rule` marks the line where the findings must be. A file whose name
begins with `good` raises none; `bad` raises errors, `warn` raises warnings. Adding a case is adding
a file.
"""

import re
from pathlib import Path

import pytest

from builder.model.finding import Finding, Severity
from builder.reader.source import Source, decode
from builder.reader.trees import tree_from
from builder.reader.validate import plain_value, quick_validator, validator
from builder.reader.yaml_text import read_yaml

CASES = sorted((Path(__file__).parent / "cases").glob("*/*.yml"))
MARK = re.compile(r"<- ([a-z-]+(?:, [a-z-]+)*)")


def findings_of(path: Path) -> tuple[Finding, ...]:
    """Read a case as if it were a tree."""
    source = decode("trees/charging/case.yml", path.read_bytes())
    assert isinstance(source, Source)
    return tree_from(source)[1]


def marked(path: Path) -> list[tuple[str, int]]:
    """Return the rule and line of every mark."""
    lines = path.read_text(encoding="utf-8").split("\n")
    return sorted(
        (rule, number)
        for number, line in enumerate(lines, 1)
        for match in MARK.finditer(line)
        for rule in match.group(1).split(", ")
    )


@pytest.mark.parametrize("path", CASES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_mistake_is_found_on_its_line(path: Path) -> None:
    """Exactly the marked findings, on exactly the marked lines."""
    findings = findings_of(path)
    assert [(f.rule, f.at.line) for f in sorted(findings, key=lambda f: f.rule)] == marked(path)
    expected = Severity.WARNING if path.stem.startswith("warn") else Severity.ERROR
    assert all(finding.severity is expected for finding in findings)


@pytest.mark.parametrize("path", CASES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_finding_says_what_why_and_how(path: Path) -> None:
    """A message is not done before it says what to write instead."""
    for finding in findings_of(path):
        assert finding.message
        assert finding.why
        assert finding.hint


@pytest.mark.parametrize("path", CASES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_the_quick_answer_and_the_full_one_agree(path: Path) -> None:
    """The compiled schema says `sound` exactly where the explaining one has nothing to explain."""
    source = decode("trees/charging/case.yml", path.read_bytes())
    assert isinstance(source, Source)
    root, _ = read_yaml(source)
    if root is not None:
        assert quick_validator("tree").is_valid(plain_value(root)) is validator("tree").is_valid(
            root
        )


def test_every_rule_of_text_has_a_bad_and_a_good_case() -> None:
    """Every rule of the reader has a test."""
    folders = {path.parent for path in CASES}
    for folder in folders:
        names = {path.stem.split("-")[0] for path in folder.iterdir()}
        assert {"bad", "good"} <= names, folder.name
