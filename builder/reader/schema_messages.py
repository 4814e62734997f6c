"""What a schema has against a file, in plain words.

In: the root of the file, and an error of the schema. Out: findings at the key or value in question.
The messages use the titles and examples of the schemas, so there is one place to correct them.
"""

import re
from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any

from builder.model.finding import Edit, Finding, Severity, edit_of, with_edit
from builder.model.text import Position, Text
from builder.model.typing_slip import edit_of_slip
from builder.reader.characters import quoted
from builder.reader.key_messages import example, lacking, list_of_results, missing_key, unknown_keys
from builder.reader.nodes import Map, Node, NodePath, Seq, key_at, node_at
from builder.reader.old_format import FIRST_VERSION, old_format
from builder.reader.other_results import step_of_words, word_as_branch
from builder.reader.other_units import number_hint
from builder.reader.other_words import VALUES, meant
from builder.reader.own_words import fits, right_text, swapped_date, types_of
from builder.reader.put_right import sure_edit
from builder.reader.range_words import unit_after
from builder.reader.reasons import why
from builder.reader.tree_hints import hint_of_empty_list, jobs_of_share

LONGEST_SLIP = 200  # characters; nobody typed more by a slip, and guessing would take a second
BULLET = re.compile(r"([•·▪◦‣–—*+>→]|\d{1,2}[.)]|[a-z]\))\s")  # of a word processor

SchemaError = Any  # jsonschema's ValidationError; its stubs leave every part of one unset


def explained(root: Map, error: SchemaError) -> Iterator[Finding]:
    """Yield the findings for one error."""
    path: NodePath = tuple(error.absolute_path)
    if finding := list_of_results(root, path):
        yield finding
        return
    match error.validator:
        case "additionalProperties":
            yield from unknown_keys(root, path, error.schema)
        case "required":
            yield from missing_key(root, path, error)
        case "type":
            yield _wrong_type(root, path, error)
        case "anyOf":
            yield from _none_fits(root, path, error)
        case "maxLength":
            yield _too_long(root, path, error)
        case _:
            is_branch = error.schema.get("title") == "a branch"
            word = word_as_branch(root, path) if is_branch else None
            yield word or _bad_value(root, path, error)


def _none_fits(root: Map, path: NodePath, error: SchemaError) -> Iterator[Finding]:
    """Explain a value that fits none of several forms by the form that it comes closest to."""
    value = node_at(root, path)
    if isinstance(value, Map) and all("required" in part for part in error.validator_value):
        yield from lacking(root, path, error, value)
        return
    forms: dict[int, list[SchemaError]] = {}
    for part in error.context:
        forms.setdefault(part.schema_path[0], []).append(part)
    inside = [parts for parts in forms.values() if all(part.path for part in parts)]
    if not inside or not isinstance(value, Map | Seq):
        yield _wrong_type(root, path, error)
        return
    for part in inside[0]:
        yield from explained(root, part)


def _wrong_type(root: Map, path: NodePath, error: SchemaError) -> Finding:
    value, name = node_at(root, path), _name(path)
    title = error.schema.get("title", "something else")
    if value == "":
        return _no_value(root, path, error)
    if isinstance(value, Map) and value and types_of(error.schema) == ["string"]:
        return _colon_in_a_phrase(value, error.schema)
    hint = example(name, error.schema)
    right = right_text(title, name, value, error.schema) if isinstance(value, Text) else None
    hint = _write(name, right) or hint
    if title == "a list of conditions" and right:
        hint += ", with the names of kb/conditions.yml"
    if isinstance(value, Text) and title.startswith("a list") and (bullet := BULLET.match(value)):
        hint, right = f"start every line of it with `- `, not with `{bullet[1]}`", None
    if isinstance(value, Seq) and value and types_of(error.schema) == ["object"]:
        hint = f"delete the dashes: {hint}"
    if isinstance(value, Seq) and title == "a branch":
        hint = "it leads to one place; where there are two, write a check with a result for each"
    message = f"`{name}` must be {title}, not {_shown(value)}"
    if title.startswith(f"{name},"):
        message = f"{_shown(value)} can't be read as {title}"
    if path and isinstance(path[-1], int):
        message = f"each item of `{name}` must be {title}, not {_shown(value)}"
        hint = hint.replace(f"`{name}: ", "`- ", 1)
    finding = _finding("wrong-type", _place(root, path), message, hint, title)
    return with_edit(finding, _edit(root, path, title, right))


def _edit(root: Map, path: NodePath, title: str, right: str | None) -> Edit | None:
    """Return the edit that writes a value in its right form.

    A unit must be that of its reading, and a branch of this tree must lead to a step.
    """
    value, owner = node_at(root, path), node_at(root, path[:-1])
    if right is None or not isinstance(value, Text):
        return None
    steps = root.value("steps")
    names = {name.replace(" ", "-") for name in steps} if isinstance(steps, Map) else set()
    if title in ("a branch", "a step") and "/" not in right and right not in names:
        return None
    unit = owner.value("unit") if isinstance(owner, Map) else None
    if title.startswith("a number") and unit and unit_after(value) not in ("", unit):
        return None
    return sure_edit(title, value, right)


def _colon_in_a_phrase(value: Map, schema: dict[str, Any]) -> Finding:
    """Explain a phrase with a colon in it, which made it a key with a value."""
    key, words = next(iter(value.items()))
    rest = words if isinstance(words, Text) else "..."
    title = schema.get("title", "something else")
    is_name = fits(key, schema) and not fits(f"{key}: {rest}", schema)
    finding = _finding("wrong-type", key.at,
                       f"the colon makes `{key}` a key, but this is {title}",
                       f"write just `{key}`: only its name stands here" if is_name
                       else f'put the phrase in quotes: `"{key}: {rest}"`', title)  # fmt: skip
    if not isinstance(words, Text) or len(value) > 1 or is_name:
        return finding
    at = key.at._replace(end_line=words.at.end_line, end_column=words.at.end_column)
    blanks = " " * (words.at.column - key.at.end_column - 1)
    return with_edit(finding, Edit(at, f"{key}:{blanks}{words}", quoted(f"{key}: {words}")))


def _too_long(root: Map, path: NodePath, error: SchemaError) -> Finding:
    limit = error.validator_value // 3
    message = f"`{_name(path)}` is {len(error.instance)} characters; limit {limit}"
    return _finding("too-long", _place(root, path), message,
                    "shorten it, and put the rest in `note` or an article")  # fmt: skip


def _bad_value(root: Map, path: NodePath, error: SchemaError) -> Finding:
    value, name = node_at(root, path), _name(path)
    if value in ("", []):
        return _no_value(root, path, error)
    title = error.schema.get("title", "something else")
    if error.validator == "enum":
        is_old = path == ("format",) and value == FIRST_VERSION
        return old_format(_place(root, path)) if is_old else _not_in_the_list(root, path, error)
    message = f"`{name}` must be {title}, not {_shown(value)}"
    if title == f"a {name}":
        message = f"{_shown(value)} can't be {title}"
    if len(str(value)) > LONGEST_SLIP:
        return _finding("bad-value", _place(root, path), message, _form(name, error.schema), title)
    right = right_text(title, name, value, error.schema) if isinstance(value, Text) else None
    if right and re.fullmatch(r"-?\d+,\d+", str(value)):
        message = f"`{value}` has a decimal comma"
    near = get_close_matches(str(value), map(str, error.schema.get("examples", ())), n=1)
    likely = f"did you mean `{near[0]}`?" if near and not str(value)[0].isdigit() else ""
    if near and near[0].startswith(f"{value} "):
        likely = f"add what it is done to, such as `{near[0]}`"
    if title == "a branch" and (step := step_of_words(root, str(value))):
        right = step
    hint = _write(name, right) or likely or _form(name, error.schema)
    if right and path and isinstance(path[-1], int):
        hint = f"write `{right}`"
    share = jobs_of_share(root, path, str(value))
    hint = hint if right else share or number_hint(name, str(value), hint)
    if title == "a date" and (swapped := _swapped(root, path, error)):
        hint = f"two values are swapped: write `{swapped}`"
    if right and title == "a file name":
        hint = f"rename the picture to `{right}`, and write that name here"
    if name == "from" and str(value).upper() == "OL":
        hint = "OL is above every number: write `from: 0, to: OL`"
    finding = _finding("bad-value", _place(root, path), message, hint, title)
    if likely and not right and isinstance(value, Text):
        return with_edit(finding, edit_of_slip(value, near))
    return with_edit(finding, _edit(root, path, title, right))


def _swapped(root: Map, path: NodePath, error: SchemaError) -> str | None:
    return swapped_date(node_at(root, path), node_at(root, path[:-1]), error.schema)


def _not_in_the_list(root: Map, path: NodePath, error: SchemaError) -> Finding:
    value, name = str(node_at(root, path)), _name(path)
    words = [str(word) for word in dict.fromkeys(map(str, error.validator_value))]
    same = [word for word in words if word.lower() == value.lower()]
    near = same or get_close_matches(value.lower(), words, n=1, cutoff=0.6)
    listed_words = ", ".join(f"`{word}`" for word in words)
    hint = f"use one of {listed_words}" if len(words) > 1 else f"write `{name}: {words[0]}`"
    other = meant(value, VALUES, words)
    is_sure = other in ("yes", "no")
    if near := [other] if other else near:
        also = f" The words here are {listed_words}" if other and len(words) > 1 else ""
        also = "" if is_sure else also
        hint = f"did you mean `{near[0]}`?{also}"
    title = error.schema.get("title", "")
    finding = _finding("bad-value", _place(root, path), f"`{name}` can't be `{value}`", hint, title)
    typed = Text(value, _place(root, path))
    return with_edit(finding, edit_of(typed, str(other)) if is_sure else edit_of_slip(typed, words))


def _no_value(root: Map, path: NodePath, error: SchemaError) -> Finding:
    name = _name(path)
    if node_at(root, path) == []:
        hint = hint_of_empty_list(root, name)
        return _finding("bad-value", _place(root, path), f"`{name}` is an empty list", hint)
    if path and isinstance(path[-1], int):
        return _finding("missing-key", node_at(root, path).at, f"an item of `{name}` is empty",
                        "write it after the dash, or delete the dash")  # fmt: skip
    return _finding("missing-key", _place(root, path), f"`{name}` has no value",
                    example(name, error.schema))  # fmt: skip


def _form(name: str, schema: dict[str, Any]) -> str:
    """Return an example, and for a number that it takes no words."""
    title = str(schema.get("title"))
    is_number = title.startswith(("a number", "a whole number"))
    what = f"the {title.removeprefix('a number of ')}" if "number of" in title else "a number"
    return f"{f'write just {what}, ' if is_number else ''}{example(name, schema)}"


def _write(name: str, right: str | None) -> str:
    return f"write `{name}: {right}`" if right else ""


def _shown(value: Node) -> str:
    if isinstance(value, Map):
        keys = " and ".join(f"`{key}: ...`" for key in list(value)[:2])
        return keys or "an empty `{}`"
    return "a list" if isinstance(value, Seq) else f"`{value}`"


def _name(path: NodePath) -> str:
    names = [part for part in path if isinstance(part, str)]
    return names[-1] if names else "this file"


def _place(root: Map, path: NodePath) -> Position:
    """Return the position of a text, or of the key of anything else."""
    value = node_at(root, path)
    return value.at if isinstance(value, Text) and value else key_at(root, path).at


def _finding(rule: str, at: Position, message: str, hint: str, title: str = "") -> Finding:
    return Finding(rule, Severity.ERROR, at, message, why(rule, title), hint)
