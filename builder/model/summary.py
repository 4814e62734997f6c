"""What stays known of a tree once it has been judged.

In: a `Tree`. Out: its `Summary`, with the hand-overs to other trees; and of that a `Gist` in plain
strings, for whoever goes through all trees. Whole trees are never held: they are read, used and
dropped.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from sys import intern
from types import MappingProxyType
from typing import NamedTuple

from builder.model.order import leading_unmet, touches, unmet_before
from builder.model.paths import paths
from builder.model.requirements import ALL
from builder.model.routes import exits
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


class Gist(NamedTuple):
    """What is looked at in every tree when they are held beside each other.

    It holds no places, for ten thousand trees have half a million of them. Whoever finds something
    asks the summary where it stands.
    """

    id: str
    file: str
    status: str
    steps: tuple[str, ...]
    told: bool  # whether it can be found by words, lamps or codes
    words: tuple[str, ...]  # the complaints, as `plain` has them
    leads_to: tuple[tuple[str, str], ...]  # another tree, and the step entered or ""
    how_tos: tuple[str, ...]
    replaced_by: str
    silences: bool


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


def gist_of(of: Summary) -> Gist:
    """Keep of a summary what is looked at in every tree."""
    symptom = of.symptom
    return Gist(
        id=of.id,
        file=of.file,
        status=str(of.status),
        steps=tuple(map(str, of.steps)),
        told=bool(symptom.words or symptom.codes or symptom.lamps),
        words=tuple(map(plain, symptom.words)),
        leads_to=tuple(dict.fromkeys((over.tree, str(over.step or "")) for over in of.hand_overs)),
        how_tos=tuple(sorted(of.how_tos)),
        replaced_by=str(of.replaced_by or ""),
        silences=bool(of.silences),
    )


def plain(words: str) -> str:
    """Return a complaint without what makes no other complaint of it: capitals and blanks."""
    return " ".join(words.casefold().split())
