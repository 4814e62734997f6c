"""What another program reads."""

import json

from builder.model.correction import CorrectedFile, Correction
from builder.model.finding import edit_in_line, with_edit
from builder.report.as_json import findings_as_json
from tests.report.conftest import FILE


def test_the_shape_is_the_agreed_one(findings) -> None:
    """Keys, counts and order are a contract; `version` changes before they do."""
    report = json.loads(findings_as_json(findings, 7))
    assert list(report) == ["version", "summary", "findings"]
    assert report["version"] == 1
    assert report["summary"] == {"trees": 7, "errors": 4, "warnings": 2}
    assert report["findings"][2] == {
        "rule": "reading-gap",
        "severity": "error",
        "file": "trees/charging/lamp-on.yml",
        "line": 6,
        "column": 18,
        "end_line": 6,
        "end_column": 28,
        "message": "no result takes 13.3 V",
        "why": "a technician who reads 13.3 V has nowhere to go",
        "hint": "let one range start where the other ends: `13.2 to 14.8`",
    }


def test_an_edit_and_what_was_fixed_are_told(findings) -> None:
    """Where a hint leaves no choice, the finding has its edit; `fixed` is there where asked for."""
    edit = edit_in_line(FILE, 6, 18, "below 13.2", "below 13.4")
    made = Correction(with_edit(findings[2], edit), 6, "- {result: below 13.4, branch: belt}")
    fixed = [CorrectedFile(FILE, "before", "after", (made,))]
    report = json.loads(findings_as_json([made.finding], 7, fixed))
    assert report["findings"][0]["edit"] == {
        "line": 6, "column": 18, "end_line": 6, "end_column": 28,
        "old": "below 13.2", "new": "below 13.4",
    }  # fmt: skip
    assert report["fixed"] == [
        {"rule": "reading-gap", "file": FILE, "line": 6, "message": "no result takes 13.3 V",
         "now": "- {result: below 13.4, branch: belt}"},
    ]  # fmt: skip
    assert json.loads(findings_as_json([], 7, []))["fixed"] == []


def test_characters_of_other_languages_stay_as_they_are(findings) -> None:
    """The report is UTF-8, so that it can be read as it is."""
    assert "充電" in findings_as_json(findings, 1)
