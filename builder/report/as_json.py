"""Findings for another program, as JSON.

In: findings in their order, the number of trees, and what was put right if that was asked for. Out:
one JSON text; `version` changes when the shape does.
"""

import json
from collections.abc import Iterable, Sequence
from typing import Any

from builder.model.correction import CorrectedFile
from builder.model.finding import Edit, Finding, Severity

JSON_VERSION = 1


def findings_as_json(
    findings: Sequence[Finding], trees: int, fixed: Iterable[CorrectedFile] | None = None
) -> str:
    """Write the findings; files are relative to the shop, lines and columns count from 1."""
    errors = sum(one.severity is Severity.ERROR for one in findings)
    summary = {"trees": trees, "errors": errors, "warnings": len(findings) - errors}
    entries = [_finding(one) for one in findings]
    report = {"version": JSON_VERSION, "summary": summary, "findings": entries}
    if fixed is not None:
        report["fixed"] = [entry for one in fixed for entry in _corrections(one)]
    return json.dumps(report, ensure_ascii=False, indent=2) + "\n"


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "rule": finding.rule,
        "severity": str(finding.severity),
        "file": finding.at.file,
        "line": finding.at.line,
        "column": finding.at.column,
        "end_line": finding.at.end_line,
        "end_column": finding.at.end_column,
        "message": finding.message,
        "why": finding.why,
        "hint": finding.hint,
        **({"edit": _edit(finding.edit)} if finding.edit else {}),
    }


def _edit(edit: Edit) -> dict[str, Any]:
    return {
        "line": edit.at.line,
        "column": edit.at.column,
        "end_line": edit.at.end_line,
        "end_column": edit.at.end_column,
        "old": edit.old,
        "new": edit.new,
    }


def _corrections(one: CorrectedFile) -> Iterable[dict[str, Any]]:
    for made in one.corrections:
        yield {
            "rule": made.finding.rule,
            "file": one.file,
            "line": made.line,
            "message": made.finding.message,
            "now": made.now,
        }
