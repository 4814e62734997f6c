"""Keys that a file has and shouldn't, or should have and hasn't.

In: the root of the file, a path, and the schema of the map at that path. Out: findings.
"""

from collections.abc import Iterator
from difflib import get_close_matches
from typing import Any

from builder.model.finding import Edit, Finding, Severity, edit_of, with_edit
from builder.model.text import Position, Text
from builder.model.typing_slip import edit_of_slip
from builder.reader.nodes import Map, Node, NodePath, Seq, key_at, node_at
from builder.reader.old_format import new_word
from builder.reader.other_results import results_in_brackets
from builder.reader.other_words import KEYS, meant
from builder.reader.own_words import with_its_keys
from builder.reader.put_right import put_right
from builder.reader.reasons import why
from builder.reader.schemas.step_schema import KIND

Schema = dict[str, Any]
SchemaError = Any  # jsonschema's ValidationError; its stubs leave every part of one unset
SWAPPED = {
    ("action", "branch"): "in an action the next step is `then:`",
    ("check", "then"): "a check goes on by its results: write `branch:` at each of them",
    ("check", "branch"): "put it under `results:`, at the result that leads there",
}
NO_WORD = "leave it out: `baytree words` lists the words that this place has"
SHOWN = 8  # keys that a hint lists


def unknown_keys(root: Map, path: NodePath, schema: Schema) -> Iterator[Finding]:
    """Yield a finding for every key that the schema doesn't have."""
    owner = node_at(root, path)
    assert isinstance(owner, Map)
    known = list(schema["properties"])
    kinds = [key for key in owner if key in KIND]
    if len(kinds) > 1 and any(kind in known for kind in KIND):
        yield _two_kinds(kinds)
        return
    for key, value in owner.items():
        if key in known:
            continue
        if is_step(value):
            yield _misplaced_step(key, path)
            return  # what follows belongs to that step
        finding = _finding("unknown-key", key.at, f"unknown key `{key}`",
                           _key_hint(key, known, owner))  # fmt: skip
        yield with_edit(finding, _key_edit(key, known, owner))


def _two_kinds(kinds: list[Text]) -> Finding:
    first, second = kinds[:2]
    return _finding("unknown-key", second.at,
                    f"a step is one thing, but this one has `{first}` and `{second}`",
                    "make it two steps, or put one of the texts into `note`")  # fmt: skip


def is_step(value: Node) -> bool:
    """Whether a value is a step, wherever it is."""
    return isinstance(value, Map) and any(kind in value for kind in KIND)


def _misplaced_step(key: Text, path: NodePath) -> Finding:
    where = f"it's inside the step `{path[-1]}`" if path else "it isn't under `steps`"
    moved = f"{key.at.column - 3} fewer" if key.at.column > 3 else f"{3 - key.at.column} more"
    return _finding("unknown-key", key.at, f"`{key}` looks like a step, but {where}",
                    f"start it in column 3, as the other steps: {moved} spaces before it "
                    "and before each of its lines")  # fmt: skip


def _key_edit(key: Text, known: list[str], owner: Map) -> Edit | None:
    """Return the edit for a mistyped key, and for the one that an action has another word for."""
    if key == "branch" and "action" in owner and "then" not in owner:
        return edit_of(key, "then")
    if (new := new_word(key)) and new in known and new not in owner:
        return edit_of(key, new)
    if any(key in own for _, own in KIND.values()):
        return None
    return edit_of_slip(key, (name for name in known if name not in owner))


def _key_hint(key: Text, known: list[str], owner: Map) -> str:
    kinds = [kind for kind, (_, own) in KIND.items() if key in own]
    kind = next((kind for kind in KIND if kind in owner), "")
    if kind == "check" and key == "then" and _all_lead_on(owner):
        return f"delete line {key.at.line}: each result of this check has its branch already"
    if swapped := SWAPPED.get((kind, str(key))):
        return swapped
    if kinds and kind:
        return f"`{key}` belongs in a `{kinds[0]}` step; here, say it in `note`"
    free = [name for name in known if name not in owner]
    if (new := new_word(key)) in free:
        return f"it is called `{new}` now"
    if (other := meant(key, KEYS, free)) and other not in ("Nm", "km"):
        return f"the word here is `{other}`"
    if other:
        value = owner.value(key)
        right = put_right(f"{'newton meters' if other == 'Nm' else 'kilometers'}", key,
                          f"{value} {'lb-ft' if other == 'Nm' else 'mi'}")  # fmt: skip
        return f"write `{other}: {right or '...'}`, the same in {other}"
    if near := get_close_matches(key.lower(), free, n=1, cutoff=0.6):
        return f"did you mean `{near[0]}`?"
    if len(free) > SHOWN:
        return "put what it says into `note`" if "note" in free else NO_WORD
    return f"use one of {', '.join(f'`{name}`' for name in free)}, or leave it out"


def _all_lead_on(check: Map) -> bool:
    """Whether every result of a check has its branch."""
    results = check.value("results")
    if isinstance(results, Map):
        return bool(results)
    items = results if isinstance(results, Seq) else ()
    return bool(items) and all(isinstance(one, Map) and "branch" in one for one in items)


def missing_key(root: Map, path: NodePath, error: SchemaError) -> Iterator[Finding]:
    """Yield a finding for a required key that isn't there."""
    owner = node_at(root, path)
    absent = next(name for name in error.validator_value if name not in error.instance)
    unknown = [key for key in error.instance if key not in error.schema["properties"]]
    if get_close_matches(absent, [key.lower() for key in unknown], cutoff=0.6) or any(
        meant(key, KEYS, [absent]) for key in unknown
    ):
        return  # it is misspelled or called another name, and reported as an unknown key
    part = error.schema["properties"][absent]
    title = error.schema.get("title", "this")
    at = _owner_place(root, path, owner)
    first = next(iter(owner.items()), None) if isinstance(owner, Map) else None
    if absent == "branch" and first:
        message = f"the result `{first[1]}` has no `branch`" if isinstance(first[1], Text) else (
            "this result has no `branch`")  # fmt: skip
        yield _finding("missing-key", at, message,
                       "add a line below it: `branch: ...`, with the name of the next step",
                       part["title"])  # fmt: skip
        return
    message = f"{title} needs `{absent}` ({part['title']})"
    if right := with_its_keys(owner, error.schema):
        yield _finding("missing-key", at, message, f"write `{right}`")
        return
    yield _finding("missing-key", at, message, f"add it, {example(absent, part)}")


def _owner_place(root: Map, path: NodePath, owner: object) -> Position:
    if path and isinstance(path[-1], str):
        return key_at(root, path).at
    if isinstance(owner, Map) and owner:
        return next(iter(owner)).at
    return owner.at if isinstance(owner, Map | Seq | Text) else root.at


def list_of_results(root: Map, path: NodePath) -> Finding | None:
    """Return the finding for results as `[yes: belt, no: fuse]`; None where it's something else."""
    if path[-2:-1] != ("results",) or not (right := results_in_brackets(node_at(root, path[:-1]))):
        return None
    return _finding("wrong-type", key_at(root, path[:-1]).at, "`results` stand in braces here",
                    f"write `results: {right}`")  # fmt: skip


def lacking(root: Map, path: NodePath, error: SchemaError, value: Map) -> Iterator[Finding]:
    """Yield the finding for a map that lacks a key by which it would be one of several things."""
    forms = [part["required"] for part in error.validator_value]
    keys = [name for form in forms for name in form]
    for key in value:
        if key not in keys and (near := get_close_matches(key.lower(), keys, n=1, cutoff=0.6)):
            finding = _finding("unknown-key", key.at, f"unknown key `{key}`",
                               f"did you mean `{near[0]}`?")  # fmt: skip
            yield with_edit(finding, edit_of_slip(key, keys))
            return
    form = max(forms, key=lambda form: sum(name in value for name in form))
    absent = [name for name in form if name not in value]
    at, name = key_at(root, path).at, key_at(root, path)
    if len(form) > 1 and absent != form:
        shown = " and ".join(f"`{key}`" for key in absent)
        examples = (example(key, error.schema["properties"][key]) for key in absent)
        texts = ", ".join(text.removeprefix("for example ") for text in examples)
        yield _finding(
            "missing-key", at, f"`{name}` has no {shown}", f"add it, for example {texts}"
        )
        return
    listed = ", ".join(f"`{form[0]}`" for form in forms)
    message = f"`{name}` must be {error.schema.get('title', 'complete')}"
    yield _finding("missing-key", at, message, f"start it with one of {listed}")


def example(name: str, schema: Schema) -> str:
    """Return the example of a schema: `for example `minutes: 4``."""
    examples = [str(example) for example in schema.get("examples", [])]
    text = next(iter(examples), "") or " or ".join(map(str, schema.get("enum", [])))
    return f"for example `{name}: {text}`" if text else f"as `{name}: ...`"


def _finding(rule: str, at: Position, message: str, hint: str, title: str = "") -> Finding:
    return Finding(rule, Severity.ERROR, at, message, why(rule, title), hint)
