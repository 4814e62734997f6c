"""The setup record of a module, from its map.

In: the map of a file of `kb/modules/` that has passed its schema. Out: a `Module`.
"""

from builder.model.finding import Finding
from builder.model.module_record import (
    DriveBefore,
    Fitting,
    Module,
    Needed,
    SafetySystem,
    SetUpStep,
    UsedPart,
)
from builder.model.text import Number, Text
from builder.reader.nodes import EMPTY, Map, Node
from builder.reader.schemas.step_schema import MODULE_VERBS
from builder.reader.source import mistake
from builder.reader.values import (
    choice_of,
    conditions,
    map_,
    money,
    named_texts,
    number,
    scopes,
    text,
    texts,
    the_text,
)


def module_from(id_: str, file: str, root: Map) -> Module:
    """Read one setup record."""
    return Module(
        id=id_,
        file=file,
        at=root.key("module").at,
        name=the_text(root, "module"),
        used_part=choice_of(UsedPart, root, "used_part", UsedPart.UNKNOWN),
        drive_before_set_up=choice_of(
            DriveBefore, root, "drive_before_set_up", DriveBefore.UNKNOWN
        ),
        safety=choice_of(SafetySystem, root, "safety", SafetySystem.NONE),
        set_up=_set_up(map_(root, "set_up") or EMPTY),
        also_called=texts(root, "also_called"),
        applies_to=scopes(root),
        refusals=named_texts(root, "refusals"),
        prove_first=texts(root, "prove_first"),
        write_down=texts(root, "write_down"),
        released_by=text(root, "released_by"),
        drive_why=text(root, "drive_why"),
        network=text(root, "network"),
        if_it_fails=text(root, "if_it_fails"),
        price=money(text(root, "price")),
        hours={name: Number(value, value.at) for name, value in named_texts(root, "hours").items()},
        source=named_texts(root, "source"),
        fit=_fitting(map_(root, "fit")),
    )


def without_releaser(module: Module) -> Finding | None:
    """Return the finding for a used part that may be released, but nobody says by whom."""
    if module.used_part is not UsedPart.IF_RELEASED or module.released_by:
        return None
    return mistake("missing-key", module.at, "a used part works `if released`, and nobody is named",
                   "the customer's sheet can't say what a used part takes",
                   "add who can release it, for example `released_by: a dealer`")  # fmt: skip


def _fitting(node: Map | None) -> Fitting | None:
    if node is None:
        return None
    when, needs = conditions(node)
    return Fitting(
        do=texts(node, "do"),
        when=when,
        needs=needs,
        hazards=texts(node, "hazards"),
        torques=texts(node, "torques"),
    )


def _set_up(node: Map) -> tuple[SetUpStep, ...]:
    return tuple(_set_up_step(verb, value) for verb, value in node.items() if verb in MODULE_VERBS)


def _set_up_step(verb: Text, value: Node) -> SetUpStep:
    if not isinstance(value, Map):
        return SetUpStep(str(verb), verb.at, Needed(str(value)))
    return SetUpStep(
        verb=str(verb),
        at=verb.at,
        needed=Needed.NEEDED,
        minutes=number(value, "minutes"),
        needs=texts(value, "needs"),
        hazards=texts(value, "hazards"),
    )
