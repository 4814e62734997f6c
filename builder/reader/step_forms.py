"""A step from its map.

In: the map of a step that has passed the schema. Out: a `Step`, and a finding for every mistake.
"""

from collections.abc import Callable, Iterator
from typing import Any

from builder.model.checks import Check
from builder.model.ends import (
    Drive,
    Fix,
    FixOption,
    PartKind,
    Proof,
    Replaces,
    Return,
    Stop,
    StopKind,
    Verification,
)
from builder.model.finding import Finding
from builder.model.text import Text
from builder.model.tree import Action, Step, Where
from builder.reader.nodes import EMPTY, Map, Node
from builder.reader.result_forms import check_from
from builder.reader.schemas.step_schema import ANY_STEP, KIND
from builder.reader.source import mistake
from builder.reader.turned_ends import turned_prices
from builder.reader.values import (
    branch,
    choice_of,
    choice_or_none,
    conditions,
    deeds,
    items,
    map_,
    maps,
    maps_by_name,
    money,
    number,
    parts,
    picture,
    text,
    texts,
    texts_by_name,
    the_text,
)

# How the other keys of a step are read. Most steps have a few of them: only those cost any time.
OF_ANY_STEP: dict[str, Callable[[Map, str], object]] = {
    **dict.fromkeys(("note", "hook_up", "how_to", "put_back", "same_as"), text),
    **dict.fromkeys(("do", "tools", "hazards", "write_down", "after"), texts),
    **dict.fromkeys(("minutes", "wait", "people", "at_most"), number),
    "spent": branch,
}


def step_from(id_: Text, node: Map, findings: list[Finding]) -> Step:
    """Build a step; its mistakes are added to `findings`."""
    kind = next(kind for kind in (*KIND, "return") if node.value(kind) is not None)
    if text(node, "spent") and not text(node, "at_most") and not map_(node, "each"):
        findings.append(mistake("bad-value", node.key("spent").at, "`spent` has no `at_most`",
                                "the tech can't tell when the limit is reached",
                                "add `at_most: 3`, or delete `spent`"))  # fmt: skip
    findings += turned_prices(node)
    if by := text(node, "by"):
        findings += _beside_procedure(node, by)
    when, needs = conditions(node)
    written: dict[str, Any] = {
        key: read(node, key) for key, read in OF_ANY_STEP.items() if key in node
    }
    return Step(
        id=id_,
        at=node.at,
        text=the_text(node, kind),
        body=_body(kind, node, findings),
        when=when,
        needs=needs,
        where=_where(node),
        does=deeds(node) if "does" in node else (),
        picture=picture(node) if "picture" in node else None,
        each=_each(node) if "each" in node else None,
        **written,
    )


def broken_step(id_: Text, node: Map | None) -> Step:
    """Return a placeholder for a step with a mistake in its text."""
    words = next((text(node, kind) for kind in KIND if text(node, kind)), None) if node else None
    return Step(id_, node.at if node else id_.at, words or Text("", id_.at), Action(None))


def _body(kind: str, node: Map, findings: list[Finding]) -> Check | Action | Fix | Stop | Return:
    match kind:
        case "check":
            return check_from(node, findings)
        case "action":
            return Action(branch(node, "then"))
        case "fix":
            return _fix(node)
        case "return":
            return Return()
        case _:
            return _stop(node)


def _stop(node: Map) -> Stop:
    return Stop(
        kind=choice_of(StopKind, node, "kind", StopKind.FOREMAN),
        weight=number(node, "weight"),
        drive=choice_or_none(Drive, node, "drive"),
        why=text(node, "why"),
    )


def _fix(node: Map) -> Fix:
    replaces = map_(node, "replaces")
    return Fix(
        cause=the_text(node, "cause"),
        weight=number(node, "weight"),
        hours=number(node, "hours"),
        parts=parts(node),
        replaces=Replaces(replaces.at, the_text(replaces, "module"), the_text(replaces, "part"))
        if replaces
        else None,
        verify=tuple(_verification(item) for item in items(node, "verify")),
        proved_by=tuple(proof for item in maps(node, "proved_by") for proof in _proofs(item)),
        torques=texts(node, "torques"),
        drive=choice_or_none(Drive, node, "drive"),
        why=text(node, "why"),
        still_there=branch(node, "still_there"),
        tell=text(node, "tell"),
        options=tuple(_option(key, option) for key, option in maps_by_name(map_(node, "options"))),
    )


def _verification(item: Node) -> Verification:
    if isinstance(item, Map):
        for name, value in item.items():
            if isinstance(value, Map):
                return Verification(name, readings=texts_by_name(value))
            return Verification(name, tuple(_texts(value)))
    return Verification(item if isinstance(item, Text) else Text("", item.at))


def _proofs(node: Map) -> Iterator[Proof]:
    for step, value in node.items():
        yield Proof(step, tuple(_texts(value)))


def _texts(value: Node) -> Iterator[Text]:
    """Yield a result, or each of a list of results."""
    one = (value,) if isinstance(value, Text) else tuple(value)
    return (result for result in one if isinstance(result, Text))


def _where(node: Map) -> Where | None:
    if phrase := text(node, "at"):
        return Where(phrase.at, phrase)
    place = map_(node, "at")
    if place is None:
        return None
    return Where(
        at=place.at,
        part=text(place, "part"),
        connector=text(place, "connector"),
        pins=texts(place, "pins"),
        fuse=text(place, "fuse"),
    )


def _beside_procedure(node: Map, by: Text) -> Iterator[Finding]:
    """Yield a finding for every key that belongs into the procedure that a step runs."""
    own = ("check", "by", "with", "note", "results", "cannot_test", "at_most", "spent")
    known = {**KIND["check"][1], **ANY_STEP, "check": None}
    for key in node:
        if key in known and key not in own:
            yield mistake("unknown-key", key.at, f"a step with `by` can't have `{key}`",
                          "the walk would ignore it: the procedure has its own",
                          f"delete it here, or write it in kb/procedures/{by}.yml")  # fmt: skip


def _option(id_: Text, node: Map) -> FixOption:
    return FixOption(
        id=str(id_),
        at=id_.at,
        option=the_text(node, "option", str(id_)),
        hours=number(node, "hours"),
        price=money(text(node, "price")),
        parts=parts(node),
        tow=text(node, "tow") == "yes",
        note=text(node, "note"),
        not_offered=text(node, "not_offered"),
        chance=number(node, "chance"),
        part=choice_or_none(PartKind, node, "part"),
        only_if=text(node, "only_if"),
    )


def _each(node: Map) -> tuple[Text, Text] | None:
    for item, list_name in (map_(node, "each") or EMPTY).items():
        if isinstance(list_name, Text):
            return item, list_name
    return None
