"""Checks a file against its schema: every mistake as a finding in plain words.

In: a `Map` as read and the kind of file. Out: findings at the key or value in question, and the
paths at which the file is broken. The messages use the titles and examples of the schemas, so there
is one place to correct them.
"""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from functools import cache
from typing import Any

import jsonschema_rs
from jsonschema import Draft202012Validator

from builder.model.finding import Finding, Severity
from builder.model.text import Position, Text
from builder.reader.nodes import Map, Node, Seq
from builder.reader.schemas.schema_list import text_schema
from builder.reader.schemas.step_schema import KIND

Path = tuple[str | int, ...]
SchemaError = Any  # jsonschema's ValidationError; its stubs leave every part of one unset
WHY = {
    "unknown-key": "everything under it would be ignored",
    "missing-key": "the tech who follows the tree finds nothing there",
    "wrong-type": "it can't be read this way",
    "bad-value": "it can't be read this way",
    "too-long": "it doesn't fit its box on the chart",
}


@cache
def validator(kind: str) -> Draft202012Validator:
    """Return the validator of a kind of file that explains every error."""
    return Draft202012Validator(text_schema(kind))


@cache
def quick_validator(kind: str) -> jsonschema_rs.Validator:
    """Return the compiled validator: it only says valid or not, in 1/50 of the time."""
    return jsonschema_rs.validator_for(text_schema(kind))


def plain_value(node: Node) -> object:
    """Remove the positions: the compiled validator takes only plain str."""
    if isinstance(node, Map):
        return {str(key): plain_value(value) for key, value in node.items()}
    return [plain_value(item) for item in node] if isinstance(node, Seq) else str(node)


def validate(root: Map, kind: str) -> tuple[list[Finding], list[Path]]:
    """Return findings in the order of the file, and the broken paths."""
    if quick_validator(kind).is_valid(plain_value(root)):
        return [], []
    findings: list[Finding] = []
    broken: list[Path] = []
    for error in validator(kind).iter_errors(root):
        broken.append(tuple(error.absolute_path))
        findings += _explained(root, error)
    return _first_by_place(findings), broken


def _first_by_place(findings: list[Finding]) -> list[Finding]:
    """Keep the first finding of each place: the others follow from it."""
    first: dict[Position, Finding] = {}
    for finding in findings:
        first.setdefault(finding.at, finding)
    return sorted(first.values(), key=lambda finding: finding.at)


def _explained(root: Map, error: SchemaError) -> Iterator[Finding]:
    path: Path = tuple(error.absolute_path)
    match error.validator:
        case "additionalProperties":
            yield from _unknown_keys(root, path, error)
        case "required":
            yield from _missing(root, path, error)
        case "type":
            yield _wrong_type(root, path, error)
        case "anyOf":
            yield _none_fits(root, path, error)
        case "maxLength":
            yield _too_long(root, path, error)
        case _:
            yield _bad_value(root, path, error)


def _unknown_keys(root: Map, path: Path, error: SchemaError) -> Iterator[Finding]:
    owner = node_at(root, path)
    assert isinstance(owner, Map)
    known = list(error.schema["properties"])
    for key in owner:
        if key not in known:
            yield _finding(
                "unknown-key", key.at, f"unknown key `{key}`", _key_hint(key, known, owner)
            )


def _key_hint(key: Text, known: list[str], owner: Map) -> str:
    near = get_close_matches(key.lower(), known, n=1, cutoff=0.6)
    if near:
        return f"did you mean `{near[0]}`?"
    kinds = [kind for kind, (_, own) in KIND.items() if key in own]
    if kinds and any(kind in owner for kind in KIND):
        return f"`{key}` belongs in a `{kinds[0]}` step; delete it here"
    unused = ", ".join(f"`{name}`" for name in known if name not in owner)
    return f"delete it, or use one of {unused}"


def _missing(root: Map, path: Path, error: SchemaError) -> Iterator[Finding]:
    owner = node_at(root, path)
    absent = next(name for name in error.validator_value if name not in error.instance)
    unknown = [key for key in error.instance if key not in error.schema["properties"]]
    if get_close_matches(absent, [key.lower() for key in unknown], cutoff=0.6):
        return  # it is misspelled, and reported as an unknown key
    part = error.schema["properties"][absent]
    title = error.schema.get("title", "this")
    message = f"{title} needs `{absent}` ({part['title']})"
    at = _owner_place(root, path, owner)
    yield _finding("missing-key", at, message, _example(absent, part))


def _owner_place(root: Map, path: Path, owner: Node) -> Position:
    if path and isinstance(path[-1], str):
        return key_at(root, path).at
    if isinstance(owner, Map) and owner:
        return next(iter(owner)).at
    return owner.at


def _wrong_type(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    name = _name(path)
    title = error.schema.get("title", "something else")
    if value == "":
        return _finding("missing-key", _place(root, path), f"`{name}` has no value",
                        _example(name, error.schema))  # fmt: skip
    message = f"`{name}` must be {title}, not {_shown(value)}"
    return _finding("wrong-type", _place(root, path), message, _example(name, error.schema))


def _none_fits(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    if isinstance(value, Map) and all("required" in part for part in error.validator_value):
        return _no_alternative(root, path, error, value)
    return _wrong_type(root, path, error)


def _no_alternative(root: Map, path: Path, error: SchemaError, value: Map) -> Finding:
    """Return the finding for a map without the key that says what it is."""
    words = [part["required"][0] for part in error.validator_value]
    for key in value:
        if near := get_close_matches(key.lower(), words, n=1, cutoff=0.6):
            return _finding("unknown-key", key.at, f"unknown key `{key}`",
                            f"did you mean `{near[0]}`?")  # fmt: skip
    listed = ", ".join(f"`{word}`" for word in words)
    message = f"`{_name(path)}` must be {error.schema.get('title', 'complete')}"
    return _finding("missing-key", _place(root, path, key=True), message,
                    f"start it with one of {listed}")  # fmt: skip


def _too_long(root: Map, path: Path, error: SchemaError) -> Finding:
    limit = error.validator_value // 3
    message = f"`{_name(path)}` is {len(error.instance)} characters; limit {limit}"
    return _finding("too-long", _place(root, path), message,
                    "shorten it, and put the rest in `note` or an article")  # fmt: skip


def _bad_value(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    name = _name(path)
    if value == "":
        return _finding("missing-key", _place(root, path), f"`{name}` has no value",
                        _example(name, error.schema))  # fmt: skip
    title = error.schema.get("title", "something else")
    if error.validator == "enum":
        words = [str(word) for word in dict.fromkeys(map(str, error.validator_value))]
        near = get_close_matches(str(value).lower(), words, n=1, cutoff=0.6)
        listed = ", ".join(f"`{word}`" for word in words)
        hint = f"did you mean `{near[0]}`?" if near else f"use one of {listed}"
        return _finding("bad-value", _place(root, path), f"`{name}` can't be `{value}`", hint)
    if isinstance(value, Text) and re.fullmatch(r"-?\d+,\d+", value):
        return _finding("bad-value", _place(root, path), f"`{value}` has a decimal comma",
                        f"write `{name}: {value.replace(',', '.')}`")  # fmt: skip
    near = get_close_matches(str(value), map(str, error.schema.get("examples", ())), n=1)
    hint = f"did you mean `{near[0]}`?" if near else _example(name, error.schema)
    message = f"`{name}` must be {title}, not {_shown(value)}"
    return _finding("bad-value", _place(root, path), message, hint)


def _example(name: str | int, schema: dict[str, Any]) -> str:
    text = str(next(iter(schema.get("examples", [])), "") or " or ".join(schema.get("enum", [])))
    return f"for example `{name}: {text}`" if text else ""


def _shown(value: Node) -> str:
    if isinstance(value, Map):
        keys = " and ".join(f"`{key}: ...`" for key in list(value)[:2])
        return keys or "an empty `{}`"
    if isinstance(value, Seq):
        return "a list" if value else "an empty list"
    return f"`{value}`"


def _name(path: Path) -> str:
    names = [part for part in path if isinstance(part, str)]
    return names[-1] if names else "this file"


def _place(root: Map, path: Path, key: bool = False) -> Position:
    """Return the position of a text, or of the key of anything else."""
    value = node_at(root, path)
    if isinstance(value, Text) and value and not key:
        return value.at
    return key_at(root, path).at


def key_at(root: Map, path: Path) -> Text:
    """Return the nearest key at or above a path, as written."""
    while path and not isinstance(path[-1], str):
        path = path[:-1]
    if not path:
        return next(iter(root), Text("", root.at))
    owner = node_at(root, path[:-1])
    assert isinstance(owner, Map)
    return owner.key(str(path[-1]))


def node_at(root: Node, path: Path) -> Node:
    """Follow a path of keys and list indexes."""
    node = root
    for part in path:
        if isinstance(node, Map):
            node = node[Text(str(part))]
        elif isinstance(node, Seq):
            node = node[int(part)]
    return node


def _finding(rule: str, at: Position, message: str, hint: str) -> Finding:
    return Finding(rule, Severity.ERROR, at, message, WHY[rule], hint)
