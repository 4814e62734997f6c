"""Findings as workflow commands, which a forge shows beside the changed lines.

In: findings, and the folder of the shop inside its repository. Out: one line of text a finding, as
`::error file=...,line=...::`. In values `%`, line ends, `:` and `,` are written by their numbers.
"""

from collections.abc import Iterable, Mapping

from builder.model.finding import Finding

OF_A_MESSAGE = {"%": "%25", "\r": "%0D", "\n": "%0A"}
OF_A_PROPERTY = OF_A_MESSAGE | {":": "%3A", ",": "%2C"}


def as_annotations(findings: Iterable[Finding], prefix: str = "") -> str:
    """Write one command a finding; `prefix` is the shop's folder in its repository."""
    return "".join(f"{_command(one, prefix)}\n" for one in findings)


def _command(finding: Finding, prefix: str) -> str:
    at = finding.at
    place = {"file": prefix + at.file, "line": at.line, "endLine": at.end_line}
    if at.line == at.end_line:  # columns count only within one line
        place |= {"col": at.column, "endColumn": at.end_column}
    place["title"] = finding.rule
    properties = ",".join(
        f"{name}={_escaped(str(value), OF_A_PROPERTY)}" for name, value in place.items()
    )
    words = "\n".join(text for text in (finding.message, finding.why, finding.hint) if text)
    return f"::{finding.severity} {properties}::{_escaped(words, OF_A_MESSAGE)}"


def _escaped(text: str, signs: Mapping[str, str]) -> str:
    return "".join(signs.get(sign, sign) for sign in text)
