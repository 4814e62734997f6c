"""Findings as workflow commands, which a forge shows beside the changed lines.

In: findings, and the shop's folder in its repository. Out: one line of text for each finding, as
`::error file=...,line=...::`. Line ends, `%`, `:`, and `,` are percent-encoded where a command
would read them; every other invisible character is written as its number, as on a terminal.
"""

from collections.abc import Iterable, Mapping

from builder.model.finding import Finding
from builder.report.printable import printable

MESSAGE_ESCAPES = {"%": "%25", "\r": "%0D", "\n": "%0A"}
PROPERTY_ESCAPES = MESSAGE_ESCAPES | {":": "%3A", ",": "%2C"}


def findings_as_annotations(findings: Iterable[Finding], prefix: str = "") -> str:
    """Write one command for each finding; `prefix` is the shop's folder in its repository."""
    return "".join(f"{_command(one, prefix)}\n" for one in findings)


def _command(finding: Finding, prefix: str) -> str:
    at = finding.at
    place = {"file": prefix + at.file, "line": at.line, "endLine": at.end_line}
    if at.line == at.end_line:  # columns count only within one line
        place |= {"col": at.column, "endColumn": at.end_column}
    place["title"] = finding.rule
    properties = ",".join(
        f"{name}={_escaped(str(value), PROPERTY_ESCAPES)}" for name, value in place.items()
    )
    text = "\n".join(part for part in (finding.message, finding.why, finding.hint) if part)
    return f"::{finding.severity} {properties}::{_escaped(text, MESSAGE_ESCAPES)}"


def _escaped(text: str, escapes: Mapping[str, str]) -> str:
    visible = printable(text, keep="\r\n")
    return "".join(escapes.get(one, one) for one in visible)
