"""The files in `kb/` that are lists: for each kind one function from its map to its records.

In: maps that have passed their schema. Out: records by id.
"""

from builder.model.knowledge import (
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
from builder.model.text import Text
from builder.reader.nodes import EMPTY, Map, Node
from builder.reader.values import (
    map_,
    maps_by_name,
    named_texts,
    number,
    text,
    texts,
    the_number,
    the_text,
)

FAILURE_TYPES = "failure types"
SAME_WORDS = "same words"
HOUSE_WORDS = "house words"


def systems(root: Map) -> dict[str, System]:
    """Read kb/systems.yml."""
    return {str(id_): System(id_, the_text(node, "name")) for id_, node in maps_by_name(root)}


def lamps(root: Map) -> dict[str, Lamp]:
    """Read kb/lamps.yml."""
    return {
        str(id_): Lamp(id_, the_text(node, "name"), text(node, "looks_like"), text(node, "color"))
        for id_, node in maps_by_name(root)
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
        for id_, node in maps_by_name(root)
    }


def tools(root: Map) -> dict[str, Tool]:
    """Read kb/tools.yml."""
    return {
        str(id_): Tool(
            id_, the_text(node, "name"), _reads(node), text(node, "kept"), text(node, "note")
        )
        for id_, node in maps_by_name(root)
    }


def _reads(node: Map) -> tuple[InstrumentRange, ...]:
    return tuple(
        InstrumentRange(
            unit=unit,
            low=the_number(span, "from"),
            high=the_number(span, "to"),
            resolution=number(span, "resolution"),
            error=text(span, "error"),
            over=text(span, "over"),
        )
        for unit, span in maps_by_name(map_(node, "reads"))
    )


def codes(root: Map) -> dict[str, CodeEntry]:
    """Read the codes of kb/codes.yml."""
    return {
        str(id_): CodeEntry(
            id_, the_text(node, "short"), text(node, "module"), named_texts(node, "asks")
        )
        for id_, node in maps_by_name(root)
        if id_ != FAILURE_TYPES
    }


def failure_types(root: Map) -> dict[str, FailureType]:
    """Read the failure types of kb/codes.yml."""
    return {
        str(id_): FailureType(id_, the_text(node, "short"), text(node, "set_up"))
        for id_, node in maps_by_name(map_(root, FAILURE_TYPES))
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
        for id_, node in maps_by_name(root)
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
