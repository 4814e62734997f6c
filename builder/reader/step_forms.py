"""A step from its map.

In: the map of a step that has passed the schema. Out: a `Step`, and a finding for every mistake.
"""

from builder.model.checks import Check
from builder.model.ends import Fix, FixOption, Replaces, Stop, StopKind
from builder.model.finding import Finding
from builder.model.text import Text
from builder.model.tree import Action, Step
from builder.reader.nodes import EMPTY, Map
from builder.reader.result_forms import check_from
from builder.reader.schemas.step_schema import KIND
from builder.reader.source import mistake
from builder.reader.values import (
    branch,
    choice_of,
    deeds,
    map_,
    money,
    number,
    parts,
    picture,
    text,
    texts,
    the_text,
)


def step_from(id_: Text, node: Map, findings: list[Finding]) -> Step:
    """Build a step; its mistakes are added to `findings`."""
    kind = next(kind for kind in KIND if node.value(kind) is not None)
    if text(node, "spent") and not text(node, "at_most") and not map_(node, "each"):
        findings.append(mistake("bad-value", node.key("spent").at, "`spent` has no `at_most`",
                                "the tech can't tell when the limit is reached",
                                "add `at_most: 3`, or delete `spent`"))  # fmt: skip
    return Step(
        id=id_,
        at=node.at,
        text=the_text(node, kind),
        body=_body(kind, node, findings),
        note=text(node, "note"),
        when=texts(node, "when"),
        tools=texts(node, "tools"),
        how_to=text(node, "how_to"),
        picture=picture(node),
        minutes=number(node, "minutes"),
        wait=number(node, "wait"),
        people=number(node, "people"),
        hazards=texts(node, "hazards"),
        does=deeds(node),
        write_down=texts(node, "write_down"),
        put_back=text(node, "put_back"),
        at_most=number(node, "at_most"),
        spent=branch(node, "spent"),
        same_as=text(node, "same_as"),
        after=texts(node, "after"),
        each=_each(node),
    )


def broken_step(id_: Text, node: Map | None) -> Step:
    """Return a placeholder for a step with a mistake in its text."""
    words = next((text(node, kind) for kind in KIND if text(node, kind)), None) if node else None
    return Step(id_, node.at if node else id_.at, words or Text("", id_.at), Action(None))


def _body(kind: str, node: Map, findings: list[Finding]) -> Check | Action | Fix | Stop:
    match kind:
        case "check":
            return check_from(node, findings)
        case "action":
            return Action(branch(node, "then"))
        case "fix":
            return _fix(node)
        case _:
            return Stop(choice_of(StopKind, node, "kind", StopKind.FOREMAN), number(node, "weight"))


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
        verify=texts(node, "verify"),
        still_there=branch(node, "still_there"),
        tell=text(node, "tell"),
        options=tuple(
            _option(key, value)
            for key, value in (map_(node, "options") or EMPTY).items()
            if isinstance(value, Map)
        ),
    )


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
    )


def _each(node: Map) -> tuple[Text, Text] | None:
    for item, list_name in (map_(node, "each") or EMPTY).items():
        if isinstance(list_name, Text):
            return item, list_name
    return None
