"""Findings for another program, as JSON.

In: findings in their order and the number of trees. Out: one JSON text; `version` changes when the
shape does.
"""

import json
from collections.abc import Sequence
from typing import Any

from builder.model.finding import Finding, Severity

JSON_VERSION = 1


def findings_as_json(findings: Sequence[Finding], trees: int) -> str:
    """Write the findings; files are relative to the shop, lines and columns count from 1."""
    errors = sum(one.severity is Severity.ERROR for one in findings)
    summary = {"trees": trees, "errors": errors, "warnings": len(findings) - errors}
    entries = [_finding(one) for one in findings]
    report = {"version": JSON_VERSION, "summary": summary, "findings": entries}
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
    }
