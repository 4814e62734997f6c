"""What another program reads."""

import json

from builder.report.as_json import findings_as_json


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


def test_characters_of_other_languages_stay_as_they_are(findings) -> None:
    """The report is UTF-8, so that it can be read as it is."""
    assert "充電" in findings_as_json(findings, 1)
