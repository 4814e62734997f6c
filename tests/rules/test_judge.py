"""What holds for all rules together: drafts, retired trees, order, silences."""

from pathlib import Path

import pytest

from builder.graph.requirements import REQUIREMENTS
from builder.model.finding import Severity
from builder.reader.schemas.step_schema import MODULE_VERBS, VERBS

from .conftest import Judged, files_of

BAD = """\
status: {status}
steps:
  battery:
    check: Is it a dead battery?
    results:
      - {{result: yes, branch: nowhere}}
      - {{result: no, branch: repair}}
"""


def test_in_a_draft_every_finding_of_a_rule_is_a_warning(judged: Judged) -> None:
    """Half-written work can be kept and built."""
    ready = judged(files_of(BAD.format(status="ready")))
    draft = judged(files_of(BAD.format(status="draft")))
    assert {finding.severity for finding in ready} == {Severity.ERROR, Severity.WARNING}
    assert [finding.rule for finding in draft] == [finding.rule for finding in ready]
    assert {finding.severity for finding in draft} == {Severity.WARNING}


def test_a_retired_tree_has_no_findings(judged: Judged) -> None:
    """Its page only points to what replaced it."""
    text = BAD.format(status="retired").replace(
        "steps:", "replaced_by: network/unit-silent\nsteps:"
    )
    assert judged(files_of(text)) == []


def test_findings_come_in_the_order_of_the_file(judged: Judged) -> None:
    """An author corrects a file in one pass."""
    lines = [finding.at.line for finding in judged(files_of(BAD.format(status="ready")))]
    assert lines == sorted(lines)


def test_every_verb_of_a_requirement_is_one_of_the_closed_list() -> None:
    """The data of the order rules uses only verbs of the format."""
    known = {*VERBS, *MODULE_VERBS}
    for requirement in REQUIREMENTS:
        assert {requirement.met_by, *requirement.undone_by, *requirement.needed_by} <= known


@pytest.mark.parametrize("text", ["steps: {}", "steps: []", "steps:\n  a: {}\n", "title: x\n"])
def test_a_file_that_is_hardly_a_tree_raises_nothing(text: str, judged: Judged) -> None:
    """An author's mistake is a finding, never an exception."""
    assert judged({"trees/charging/case.yml": text})


def test_every_case_of_the_reader_can_be_judged(judged: Judged) -> None:
    """The rules can judge whatever the reader makes of a broken file."""
    folder = Path(__file__).parents[1] / "reader" / "cases"
    files = {
        f"trees/charging/case-{number}.yml": path.read_text(encoding="utf-8")
        for number, path in enumerate(sorted(folder.glob("*/*.yml")))
        if path.parent.name != "encoding"
    }
    assert judged(files)
