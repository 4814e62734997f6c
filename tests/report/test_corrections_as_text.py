"""What was fixed, for a person and as a diff."""

import pytest

from builder.model.correction import CorrectedFile
from builder.report.corrections_as_text import corrections_as_diff

HEAD = "--- a/trees/horn/silent.yml\n+++ b/trees/horn/silent.yml\n"


@pytest.mark.parametrize(
    ("before", "after", "diff"),
    [
        ("a: 1\n", "a: 2\n", "@@ -1 +1 @@\n-a: 1\n+a: 2\n"),
        ("a: 1\r\n", "a: 2\r\n", "@@ -1 +1 @@\n-a: 1\r\n+a: 2\r\n"),
        ("a: 1", "a: 2", "@@ -1 +1 @@\n-a: 1\n\\ No newline at end of file\n"
                         "+a: 2\n\\ No newline at end of file\n"),
        ("a: \u2028x\n", "a: x\n", "@@ -1 +1 @@\n-a: \\u2028x\n+a: x\n"),
    ],
)  # fmt: skip
def test_a_diff_is_a_unified_one(before: str, after: str, diff: str) -> None:
    """Line ends are kept, a missing one is said as other tools say it, nothing moves a terminal."""
    assert corrections_as_diff([CorrectedFile("trees/horn/silent.yml", before, after, ())]) == (
        HEAD + diff
    )
