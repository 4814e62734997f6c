"""All that is known beside the one tree in hand.

In: knowledge files, the shop, and a summary of each tree. Out: one `Library` that rules, pages,
plans and the search ask. Whole trees are never held here: they are read, used and dropped.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from sys import intern
from types import MappingProxyType
from typing import NamedTuple

from builder.model.knowledge import (
    Case,
    CodeEntry,
    FailureType,
    Hazard,
    HowTo,
    Lamp,
    Module,
    System,
    Term,
    Tool,
    Vehicle,
    Word,
)
from builder.model.order import leading_unmet, touches, unmet_before
from builder.model.paths import paths
from builder.model.requirements import ALL
from builder.model.routes import exits
from builder.model.shop import Shop
from builder.model.silence import Silence
from builder.model.text import Position, Text
from builder.model.tree import Fix, Scope, Signed, Step, Symptom, Tree


class HandOver(NamedTuple):
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
    status: str
    system: Text
    symptom: Symptom
    applies_to: tuple[Scope, ...]
    steps: tuple[str, ...]
    hand_overs: tuple[HandOver, ...]
    how_tos: frozenset[str]
    tools: frozenset[str]
    modules: frozenset[str]
    written: Signed | None
    reviewed: Signed | None
    replaced_by: Text | None
    revision: str
    silences: tuple[Silence, ...] = ()


@dataclass(frozen=True, slots=True)
class Library:
    """The shop, its knowledge and its trees in summary; every map is keyed by id."""

    shop: Shop
    systems: Mapping[str, System] = field(default_factory=dict)
    lamps: Mapping[str, Lamp] = field(default_factory=dict)
    hazards: Mapping[str, Hazard] = field(default_factory=dict)
    tools: Mapping[str, Tool] = field(default_factory=dict)
    vehicles: Mapping[str, Vehicle] = field(default_factory=dict)
    codes: Mapping[str, CodeEntry] = field(default_factory=dict)
    failure_types: Mapping[str, FailureType] = field(default_factory=dict)
    glossary: Mapping[str, Term] = field(default_factory=dict)
    words: Mapping[str, Word] = field(default_factory=dict)
    same_words: Mapping[str, Word] = field(default_factory=dict)  # for the search alone
    how_tos: Mapping[str, HowTo] = field(default_factory=dict)
    modules: Mapping[str, Module] = field(default_factory=dict)
    cases: Mapping[str, Case] = field(default_factory=dict)
    pictures: frozenset[str] = frozenset()  # file names in kb/how-to/pictures
    picture_bytes: Mapping[str, int] = field(default_factory=dict)  # size of each, by its name
    trees: Mapping[str, Summary] = field(default_factory=dict)
    whole: bool = True  # whether every tree could be read without a mistake of text
    entries: Mapping[str, int] = field(default_factory=dict)  # of `tree#step` its number, if known
    callers: Mapping[str, tuple[HandOver, ...]] = field(init=False)  # by the tree they lead to

    def __post_init__(self) -> None:
        """Sort the hand-overs by the tree they lead to, once for whoever asks tree by tree."""
        object.__setattr__(self, "callers", _callers(self.trees.values()))


def _callers(summaries: Iterable[Summary]) -> dict[str, tuple[HandOver, ...]]:
    found: dict[str, list[HandOver]] = defaultdict(list)
    for summary in summaries:
        if summary.status != "retired":
            for over in summary.hand_overs:
                found[over.tree].append(over)
    return {tree: tuple(overs) for tree, overs in found.items()}


def summary_of(tree: Tree) -> Summary:
    """Keep of a tree what the others need to know."""
    steps = tree.steps.values()
    return Summary(
        id=tree.id,
        file=tree.file,
        at=tree.at,
        title=tree.title,
        status=tree.status,
        system=tree.system,
        symptom=tree.symptom,
        applies_to=tree.applies_to,
        steps=tuple(tree.steps),
        hand_overs=tuple(_hand_overs(tree)),
        how_tos=frozenset(str(step.how_to) for step in steps if step.how_to),
        tools=frozenset(str(tool) for step in steps for tool in step.tools),
        modules=frozenset(module for step in steps for module in _modules(step)),
        written=tree.written,
        reviewed=tree.reviewed,
        replaced_by=tree.replaced_by,
        revision=tree.revision,
        silences=tree.silences,
    )


def _hand_overs(tree: Tree) -> Iterator[HandOver]:
    found = [(step, way) for step in tree.steps.values() for way in exits(step)]
    leaving = [(step, way) for step, way in found if way.branch.tree]
    if not leaving:
        return
    ways = paths(tree)
    touched = [one for one in ALL if touches(tree.steps, one)]
    leading = {one.name: leading_unmet(ways, tree.steps, one) for one in touched}
    known: dict[tuple[str, ...], tuple[str, ...]] = {}

    def shared(names: Iterable[str]) -> tuple[str, ...]:
        """Keep one copy of what hand-overs of a tree have in common, and of every name."""
        found = tuple(sorted(intern(str(name)) for name in names))
        return known.setdefault(found, found)

    for step, way in leaving:
        yield HandOver(
            at=way.at,
            from_step=step.id,
            tree=str(way.branch.tree),
            step=way.branch.step,
            from_tree=tree.id,
            reached_from=shared(ways.before(step.id)),
            without={
                one.name: shared(unmet_before(leading[one.name], tree.steps, step, way, one))
                for one in touched
            },
        )


def _modules(step: Step) -> Iterator[str]:
    yield from (deed.module for deed in step.does if deed.module)
    if isinstance(step.body, Fix) and step.body.replaces:
        yield str(step.body.replaces.module)
