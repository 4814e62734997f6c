"""What stays known of a tree once it has been judged.

In: a `Tree`. Out: its `Summary`, with the handoffs to other trees; and of that a `TreeListing` in
plain strings, for rules that go through all trees. Whole trees are never held: they are read, used
and dropped.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple

from builder.model.silence import Silence
from builder.model.text import Position, Text
from builder.model.tree import Scope, Signed, Status, Symptom


class Handoff(NamedTuple):
    """A branch that leaves a tree for another; ten thousand trees have a hundred thousand."""

    at: Position
    from_step: str
    tree: str
    step: str | None
    from_tree: str = ""
    # Steps of its tree from which a walk gets to it; tuples, for sets of this size take 20 times
    # the room, and a library has thousands.
    reached_from: tuple[str, ...] = ()
    # By the name of a requirement the steps from which a walk gets to it with that unmet; a `!`
    # stands before a step that undoes it.
    without: Mapping[str, tuple[str, ...]] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Summary:
    """What stays in memory of a tree once it has been judged."""

    id: str
    file: str
    at: Position
    title: Text
    status: Status
    system: Text
    symptom: Symptom
    applies_to: tuple[Scope, ...]
    steps: tuple[str, ...]
    handoffs: tuple[Handoff, ...]
    how_tos: frozenset[str]
    tools: frozenset[str]
    modules: frozenset[str]
    written: Signed | None
    reviewed: Signed | None
    replaced_by: Text | None
    revision: str
    silences: tuple[Silence, ...] = ()


class TreeListing(NamedTuple):
    """What is looked at in every tree when they are held beside each other.

    It holds no places, for ten thousand trees have half a million of them. Whoever finds something
    asks the summary where it stands.
    """

    id: str
    file: str
    status: Status
    steps: tuple[str, ...]
    searchable: bool  # whether it can be found by words, lamps or codes
    words: tuple[str, ...]  # the complaints, as `normalized` has them
    leads_to: tuple[tuple[str, str], ...]  # another tree, and the step entered or ""
    how_tos: tuple[str, ...]
    replaced_by: str
    reviewed: str  # the date as written, or ""
    silences: bool


def listing_of(of: Summary) -> TreeListing:
    """Keep of a summary what is looked at in every tree."""
    symptom = of.symptom
    return TreeListing(
        id=of.id,
        file=of.file,
        status=of.status,
        steps=tuple(map(str, of.steps)),
        searchable=bool(symptom.words or symptom.codes or symptom.lamps),
        words=tuple(map(normalized, symptom.words)),
        leads_to=tuple(
            dict.fromkeys((handoff.tree, str(handoff.step or "")) for handoff in of.handoffs)
        ),
        how_tos=tuple(sorted(of.how_tos)),
        replaced_by=str(of.replaced_by or ""),
        reviewed=str(of.reviewed.date) if of.reviewed else "",
        silences=bool(of.silences),
    )


def normalized(words: str) -> str:
    """Return a complaint without what makes no other complaint of it: capitals and blanks."""
    return " ".join(words.casefold().split())
