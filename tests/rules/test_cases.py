"""Every rule on its own cases: files under `cases/<rule>/`.

A comment `# <- rule` marks the line on which a finding must stand. A `bad` file gives exactly the
marked findings, a `good` file gives none. Adding a case is adding a file.
"""

import re
from pathlib import Path

import pytest

from builder.rules.catalog import READER_RULES, RULES

from .conftest import Judged, files_of

CASES = sorted((Path(__file__).parent / "cases").glob("*/*.yml"))
MARK = re.compile(r"# <- ([a-z-]+(?:, [a-z-]+)*)")
NAMES = sorted(rule.RULE.name for rule in RULES if rule not in READER_RULES)


def marked(files: dict[str, str]) -> list[tuple[str, int, str]]:
    """Return the file, line and rule of every mark."""
    return sorted(
        (file, number, rule)
        for file, text in files.items()
        for number, line in enumerate(text.split("\n"), 1)
        for match in MARK.finditer(line)
        for rule in match.group(1).split(", ")
    )


@pytest.mark.parametrize("path", CASES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_case_gives_exactly_the_marked_findings(path: Path, judged: Judged) -> None:
    """A finding stands on the line that an author would put right, and says how."""
    files = files_of(path.read_text(encoding="utf-8"))
    found = judged(files)
    assert sorted((one.at.file, one.at.line, one.rule) for one in found) == marked(files), found
    assert bool(found) == path.name.startswith("bad-")
    if found:
        assert path.parent.name in {one.rule for one in found}
    assert all(one.message and one.why and one.hint for one in found)


@pytest.mark.parametrize("name", NAMES)
def test_every_rule_has_two_bad_and_two_good_cases(name: str) -> None:
    """No rule stands unproved."""
    kinds = [path.name.split("-")[0] for path in CASES if path.parent.name == name]
    assert kinds.count("bad") >= 2
    assert kinds.count("good") >= 2
