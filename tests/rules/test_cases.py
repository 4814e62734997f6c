"""Every rule on its own cases: files under `cases/<rule>/`.

A comment `# <- rule` marks the line of a finding. A `bad` file gives exactly the marked findings, a
`good` file gives none. Adding a case is adding a file.
"""

import re
from pathlib import Path

import pytest

from .conftest import Judged, files_of

CASES = sorted((Path(__file__).parent / "cases").glob("*/*.yml"))
MARK = re.compile(r"# <- ([a-z-]+(?:, [a-z-]+)*)")


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
    """A finding is on the line that an author has to correct, and says how."""
    files = files_of(path.read_text(encoding="utf-8"))
    findings = judged(files)
    places = sorted((finding.at.file, finding.at.line, finding.rule) for finding in findings)
    assert places == marked(files), findings
    assert bool(findings) == path.name.startswith("bad-")
    if findings:
        assert path.parent.name in {finding.rule for finding in findings}
    assert all(finding.message and finding.why and finding.hint for finding in findings)
