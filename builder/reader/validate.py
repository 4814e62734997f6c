"""Checks a file against its schema: every mistake as a finding in plain words.

In: a `Map` as read and the kind of file. Out: findings at the key or value in question, and the
paths at which the file is broken.
"""

from functools import cache
from typing import TYPE_CHECKING

import jsonschema_rs

from builder.model.finding import Finding
from builder.model.text import Position, Text
from builder.reader.explaining_validator import explaining_validator
from builder.reader.nodes import Map, Node, NodePath
from builder.reader.schema_messages import explained
from builder.reader.schemas.schema_list import text_schema

if TYPE_CHECKING:
    from jsonschema import Draft202012Validator


@cache
def validator(kind: str) -> "Draft202012Validator":
    """Return the validator of a kind of file that explains every error."""
    return explaining_validator(text_schema(kind))


@cache
def quick_validator(kind: str) -> jsonschema_rs.Validator:
    """Return the compiled validator: it only says valid or not, in 1/50 of the time."""
    return jsonschema_rs.validator_for(text_schema(kind))


def plain_value(node: Node) -> object:
    """Remove the positions: the compiled validator takes only plain str."""
    if isinstance(node, Text):
        return str(node)
    if isinstance(node, Map):
        return {
            str(key): str(value) if isinstance(value, Text) else plain_value(value)
            for key, value in node.items()
        }
    return [plain_value(item) for item in node]


def validate(root: Map, kind: str) -> tuple[list[Finding], list[NodePath]]:
    """Return findings in the order of the file, and the broken paths."""
    if quick_validator(kind).is_valid(plain_value(root)):
        return [], []
    findings: list[Finding] = []
    broken: list[NodePath] = []
    for error in validator(kind).iter_errors(root):
        broken.append(tuple(error.absolute_path))
        findings += explained(root, error)
    return _first_by_place(findings), broken


def _first_by_place(findings: list[Finding]) -> list[Finding]:
    """Keep the first finding of each place: the others follow from it."""
    first: dict[Position, Finding] = {}
    for finding in findings:
        first.setdefault(finding.at, finding)
    return sorted(first.values(), key=lambda finding: finding.at)
