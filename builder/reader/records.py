"""The files in `kb/`: for each kind one function from its map to its records.

In: maps that have passed their schema. Out: records by id.
"""

from builder.model.knowledge import (
    Case,
    CaseOutcome,
    CaseStep,
    CodeEntry,
    FailureType,
    Hazard,
    InstrumentRange,
    Lamp,
    Signal,
    System,
    Term,
    Tool,
    Word,
)
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
from builder.reader.values import (
    choice_of,
    conditions,
    map_,
    maps,
    money,
    named_lists,
    named_texts,
    number,
    scopes,
    text,
    texts,
    the_text,
)

FAILURE_TYPES = "failure types"
SAME_WORDS = "same words"
HOUSE_WORDS = "house words"


def _entries(root: Map) -> list[tuple[Text, Map]]:
    return [(key, value) for key, value in root.items() if isinstance(value, Map)]


def systems(root: Map) -> dict[str, System]:
    """Read kb/systems.yml."""
    return {str(id_): System(id_, the_text(node, "name")) for id_, node in _entries(root)}


def lamps(root: Map) -> dict[str, Lamp]:
    """Read kb/lamps.yml."""
    return {
        str(id_): Lamp(id_, the_text(node, "name"), text(node, "looks_like"), text(node, "color"))
        for id_, node in _entries(root)
    }


def hazards(root: Map) -> dict[str, Hazard]:
    """Read kb/hazards.yml."""
    return {
        str(id_): Hazard(
            id_,
            Signal(the_text(node, "signal")),
            the_text(node, "hazard"),
            the_text(node, "harm"),
            the_text(node, "avoid"),
            text(node, "short"),
        )
        for id_, node in _entries(root)
    }


def tools(root: Map) -> dict[str, Tool]:
    """Read kb/tools.yml."""
    return {
        str(id_): Tool(
            id_, the_text(node, "name"), _reads(node), text(node, "kept"), text(node, "note")
        )
        for id_, node in _entries(root)
    }


def _reads(node: Map) -> tuple[InstrumentRange, ...]:
    return tuple(
        InstrumentRange(
            unit=unit,
            low=_number(span, "from"),
            high=_number(span, "to"),
            resolution=number(span, "resolution"),
            error=text(span, "error"),
            over=text(span, "over"),
        )
        for unit, span in _entries(map_(node, "reads") or EMPTY)
    )


def _number(node: Map, name: str) -> Number:
    return number(node, name) or Number("0", node.at)


def codes(root: Map) -> dict[str, CodeEntry]:
    """Read the codes of kb/codes.yml."""
    return {
        str(id_): CodeEntry(
            id_, the_text(node, "short"), text(node, "module"), named_texts(node, "asks")
        )
        for id_, node in _entries(root)
        if id_ != FAILURE_TYPES
    }


def failure_types(root: Map) -> dict[str, FailureType]:
    """Read the failure types of kb/codes.yml."""
    return {
        str(id_): FailureType(id_, the_text(node, "short"), text(node, "set_up"))
        for id_, node in _entries(map_(root, FAILURE_TYPES) or EMPTY)
    }


def glossary(root: Map) -> dict[str, Term]:
    """Read kb/glossary.yml."""
    return {
        str(id_): Term(
            id_,
            the_text(node, "term"),
            the_text(node, "means"),
            texts(node, "not"),
            texts(node, "also"),
        )
        for id_, node in _entries(root)
    }


def slang(root: Map) -> dict[str, Word]:
    """Read the slang of kb/words.yml."""
    return {str(key): _word(key, value) for key, value in root.items()
            if key not in (SAME_WORDS, HOUSE_WORDS)}  # fmt: skip


def same_words(root: Map) -> dict[str, Word]:
    """Read the plain words that mean the same in a search."""
    words = map_(root, SAME_WORDS) or EMPTY
    return {str(key): _word(key, value) for key, value in words.items()}


def house_words(root: Map) -> dict[str, Word]:
    """Read what the shop doesn't write, and what it writes instead."""
    words = map_(root, HOUSE_WORDS) or EMPTY
    return {str(key): _word(key, value) for key, value in words.items()}


def _word(key: Text, value: Node) -> Word:
    if isinstance(value, Text):
        return Word(key, (value,))
    return Word(key, tuple(term for term in value if isinstance(term, Text)))


def module(id_: str, file: str, root: Map) -> Module:
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


def case(file: str, root: Map) -> Case:
    """Read one closed job."""
    dates = map_(root, "dates") or EMPTY
    minutes = map_(root, "minutes") or EMPTY
    return Case(
        id=str(the_text(root, "case")),
        file=file,
        at=root.key("case").at,
        tree=the_text(root, "tree"),
        revision=text(root, "revision"),
        vehicle=named_texts(root, "vehicle"),
        opened=the_text(dates, "opened"),
        closed=the_text(dates, "closed"),
        path=tuple(_case_step(node) for node in maps(root, "path")),
        fix=text(root, "fix"),
        worked=number(minutes, "worked"),
        waited=number(minutes, "waited"),
        outcome=choice_of(CaseOutcome, root, "outcome", CaseOutcome.UNKNOWN),
        verified=text(root, "verified"),
        also_found=texts(root, "also_found"),
        fix_in=text(root, "fix_in"),
        walked=text(root, "walked") == "yes",
        asked=named_texts(root, "asked"),
        lists=named_lists(root, "lists"),
    )


def _case_step(node: Map) -> CaseStep:
    return CaseStep(
        step=the_text(node, "step"),
        result=text(node, "result"),
        reading=text(node, "reading"),
        readings=named_texts(node, "readings"),
        tool=text(node, "tool"),
        inside=text(node, "in"),
        stated=text(node, "stated") == "yes",
    )
