"""A file against its schema: every mistake as a finding in plain words.

In: a `Map` as read and the kind of file. Out: findings that stand on the key or value concerned,
and the paths at which the file is broken. The words come from the titles and examples of the
schemas, so that there is one place to put them right.
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
    "unknown-key": "what stands under it would be passed over without a word",
    "missing-key": "whoever follows the tree would find nothing there",
    "wrong-type": "it cannot be understood as it stands",
    "bad-value": "it cannot be understood as it stands",
    "too-long": "it does not fit its box on the chart",
}


@cache
def validator(kind: str) -> Draft202012Validator:
    """Return the schema of a kind of file, for whoever asks why."""
    return Draft202012Validator(text_schema(kind))


@cache
def quick_validator(kind: str) -> jsonschema_rs.Validator:
    """Return the same schema compiled: it says only whether, in a fiftieth of the time."""
    return jsonschema_rs.validator_for(text_schema(kind))


def plain(node: Node) -> object:
    """Strip the places off: the compiled schema takes no text but plain str."""
    if isinstance(node, Map):
        return {str(key): plain(value) for key, value in node.items()}
    return [plain(item) for item in node] if isinstance(node, Seq) else str(node)


def validate(root: Map, kind: str) -> tuple[list[Finding], list[Path]]:
    """Hold a file against its schema; findings in the order of the file, and the broken paths."""
    if quick_validator(kind).is_valid(plain(root)):
        return [], []
    findings: list[Finding] = []
    broken: list[Path] = []
    for error in validator(kind).iter_errors(root):
        broken.append(tuple(error.absolute_path))
        findings += _explained(root, error)
    return _most_telling(findings), broken


def _most_telling(findings: list[Finding]) -> list[Finding]:
    """Keep the first finding of each place: what follows from it would only distract."""
    kept: dict[Position, Finding] = {}
    for finding in findings:
        kept.setdefault(finding.at, finding)
    return sorted(kept.values(), key=lambda finding: finding.at)


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
            yield _finding("unknown-key", key.at, f"unknown key `{key}`", _offer(key, known, owner))


def _offer(key: Text, known: list[str], owner: Map) -> str:
    near = get_close_matches(key.lower(), known, n=1, cutoff=0.6)
    if near:
        return f"did you mean `{near[0]}`?"
    kinds = [kind for kind, (_, own) in KIND.items() if key in own]
    if kinds and any(kind in owner for kind in KIND):
        return f"`{key}` belongs to a {kinds[0]}; delete it here"
    free = ", ".join(f"`{name}`" for name in known if name not in owner)
    return f"delete it, or use one of: {free}"


def _missing(root: Map, path: Path, error: SchemaError) -> Iterator[Finding]:
    owner = node_at(root, path)
    absent = next(name for name in error.validator_value if name not in error.instance)
    strange = [key for key in error.instance if key not in error.schema["properties"]]
    if get_close_matches(absent, [key.lower() for key in strange], cutoff=0.6):
        return  # it is there, misspelt, and told as such
    wanted = error.schema["properties"][absent]
    title = error.schema.get("title", "this")
    message = f"{title} needs `{absent}` ({wanted['title']})"
    at = _owner_place(root, path, owner)
    yield _finding("missing-key", at, message, _example(absent, wanted))


def _owner_place(root: Map, path: Path, owner: Node) -> Position:
    if path and isinstance(path[-1], str):
        return key_at(root, path).at
    if isinstance(owner, Map) and owner:
        return next(iter(owner)).at
    return owner.at


def _wrong_type(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    name = _name(path)
    wanted = error.schema.get("title", "something else")
    if value == "":
        return _finding("missing-key", _place(root, path), f"nothing stands after `{name}`",
                        _example(name, error.schema))  # fmt: skip
    message = f"`{name}` must be {wanted}; here stands {_what(value)}"
    return _finding("wrong-type", _place(root, path), message, _example(name, error.schema))


def _none_fits(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    if isinstance(value, Map) and all("required" in part for part in error.validator_value):
        return _no_alternative(root, path, error, value)
    return _wrong_type(root, path, error)


def _no_alternative(root: Map, path: Path, error: SchemaError, value: Map) -> Finding:
    """Tell of a map that lacks the word which says what it is."""
    words = [part["required"][0] for part in error.validator_value]
    for key in value:
        if near := get_close_matches(key.lower(), words, n=1, cutoff=0.6):
            return _finding("unknown-key", key.at, f"unknown key `{key}`",
                            f"did you mean `{near[0]}`?")  # fmt: skip
    listed = ", ".join(f"`{word}`" for word in words)
    message = f"`{_name(path)}` is {error.schema.get('title', 'incomplete')}, and has none of them"
    return _finding("missing-key", _place(root, path, key=True), message,
                    f"begin it with one of {listed}")  # fmt: skip


def _too_long(root: Map, path: Path, error: SchemaError) -> Finding:
    limit = error.validator_value // 3
    message = f"`{_name(path)}` has {len(error.instance)} signs; {limit} fit its box"
    return _finding("too-long", _place(root, path), message,
                    "say it shorter, and put the rest into `note` or an article")  # fmt: skip


def _bad_value(root: Map, path: Path, error: SchemaError) -> Finding:
    value = node_at(root, path)
    name = _name(path)
    if value == "":
        return _finding("missing-key", _place(root, path), f"nothing stands after `{name}`",
                        _example(name, error.schema))  # fmt: skip
    wanted = error.schema.get("title", "something else")
    if error.validator == "enum":
        words = [str(word) for word in dict.fromkeys(map(str, error.validator_value))]
        near = get_close_matches(str(value).lower(), words, n=1, cutoff=0.6)
        listed = ", ".join(f"`{word}`" for word in words)
        hint = f"did you mean `{near[0]}`?" if near else f"write one of {listed}"
        return _finding("bad-value", _place(root, path), f"`{name}` cannot be `{value}`", hint)
    if isinstance(value, Text) and re.fullmatch(r"-?\d+,\d+", value):
        return _finding("bad-value", _place(root, path), f"`{value}` has a decimal comma",
                        f"write `{name}: {value.replace(',', '.')}`")  # fmt: skip
    shown = _what(value)
    near = get_close_matches(str(value), map(str, error.schema.get("examples", ())), n=1)
    if near:
        return _finding(
            "bad-value",
            _place(root, path),
            f"`{name}` is {wanted}, not {shown}",
            f"did you mean `{near[0]}`?",
        )
    return _finding("bad-value", _place(root, path), f"`{name}` is {wanted}, not {shown}",
                    _example(name, error.schema))  # fmt: skip


def _example(name: str | int, schema: dict[str, Any]) -> str:
    shown = str(next(iter(schema.get("examples", [])), "") or " or ".join(schema.get("enum", [])))
    return f"for example `{name}: {shown}`" if shown else ""


def _what(value: Node) -> str:
    if isinstance(value, Map):
        shown = " and ".join(f"`{key}: ...`" for key in list(value)[:2])
        return shown or "an empty `{}`"
    if isinstance(value, Seq):
        return "a list" if value else "an empty list"
    return f"`{value}`"


def _name(path: Path) -> str:
    names = [part for part in path if isinstance(part, str)]
    return names[-1] if names else "this file"


def _place(root: Map, path: Path, key: bool = False) -> Position:
    """Stand on a short value, or on the key of a long one."""
    value = node_at(root, path)
    if isinstance(value, Text) and value and not key:
        return value.at
    return key_at(root, path).at


def key_at(root: Map, path: Path) -> Text:
    """Return the nearest key above a path, as written."""
    while path and not isinstance(path[-1], str):
        path = path[:-1]
    if not path:
        return next(iter(root), Text("", root.at))
    owner = node_at(root, path[:-1])
    assert isinstance(owner, Map)
    return owner.key(str(path[-1]))


def node_at(root: Node, path: Path) -> Node:
    """Follow a path of keys and list places."""
    node = root
    for part in path:
        if isinstance(node, Map):
            node = node[Text(str(part))]
        elif isinstance(node, Seq):
            node = node[int(part)]
    return node


def _finding(rule: str, at: Position, message: str, hint: str) -> Finding:
    return Finding(rule, Severity.ERROR, at, message, WHY[rule], hint)
