"""What brings a hazard on a path on which nothing has warned of it.

In: the facts of a tree. Out: `LateCaution`s, each with its path. Cautions are named by steps, by
what a fix installs, and by the states of the vehicle: those are shown when the state is entered.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.graph.cautions import hazards_of_changes
from builder.graph.moves import Move, Place
from builder.graph.precedence import reached_unmet
from builder.graph.vehicle_paths import VehiclePaths
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Deed, Step
from builder.rules.shared.rule import Facts
from builder.rules.shared.state_witness import names_in_words, own_step, shown_at
from builder.rules.shared.told_danger import tells_of


@dataclass(frozen=True, slots=True)
class LateCaution:
    """A hazard that comes before its caution."""

    hazard: str
    step: str  # of the tree
    cause: Text  # what brings it
    path: str


@dataclass(frozen=True, slots=True)
class _Visit:
    """A step on its way."""

    step: Step
    does: tuple[Deed, ...]
    named: frozenset[str]  # the hazards that are named there


def late_cautions(facts: Facts) -> Iterator[LateCaution]:
    """Yield every hazard that a step brings before anything has named it."""
    paths = facts.paths()
    visits = _visits(facts) if paths is None else _visits_along(paths)
    brought = _brought(facts.library, visits)
    graph = facts.graph if paths is None else paths
    for hazard, causes in brought.items():

        def is_named(move: Move, hazard: str = hazard) -> bool:
            visit = visits.get(move.source)
            return visit is None or hazard in visit.named

        reached = reached_unmet(graph.moves_from, graph.starts, is_named)
        told: set[str] = set()
        for place, cause in causes.items():
            step = own_step(facts, place)
            if place in reached.arrived_by and step.id not in told:
                told.add(step.id)
                path = names_in_words(reached.places_to(place))
                shown = shown_at(facts, place) if place.calls else cause
                yield LateCaution(hazard, str(step.id), shown, path)


def _visits(facts: Facts) -> dict[Place, _Visit]:
    """Return every place without a text error; a step with one may have named anything."""
    return {
        place: _Visit(step, step.does, frozenset(map(str, step.hazards)))
        for place in facts.graph.moves_from
        if (step := facts.tree.steps[place.step]).id not in facts.tree.broken
    }


def _visits_along(paths: VehiclePaths) -> dict[Place, _Visit]:
    return {
        place: _Visit(
            entry.step,
            entry.does,
            frozenset((*map(str, entry.hazards), *hazards_of_changes(entry.changed))),
        )
        for place, entry in paths.entries.items()
    }


def _brought(library: Library, visits: Mapping[Place, _Visit]) -> dict[str, dict[Place, Text]]:
    """Return by hazard the places that bring it and don't name it, with what brings it."""
    brought: dict[str, dict[Place, Text]] = defaultdict(dict)
    for place, visit in visits.items():
        for cause, hazard in _hazards_of(library, visit):
            if hazard not in visit.named:
                brought[hazard].setdefault(place, cause)
    return brought


def _hazards_of(library: Library, visit: _Visit) -> Iterator[tuple[Text, str]]:
    """Yield the hazards that a step brings, each with the text that brings it."""
    how_to = visit.step.how_to
    article = library.how_tos.get(how_to) if how_to else None
    if article and how_to:
        brought = (name for name in article.hazards if _is_brought(library, visit.step, name))
        yield from ((how_to, str(name)) for name in brought)
    for deed in visit.does:
        module = library.modules.get(deed.module) if deed.module else None
        for record in module.set_up if module else ():
            if record.verb == deed.verb:
                yield from ((deed.text, str(hazard)) for hazard in record.hazards)


def _is_brought(library: Library, step: Step, name: str) -> bool:
    """Whether a step brings a hazard of its article: a DANGER, or one that its lines tell of."""
    hazard = library.hazards.get(name)
    if hazard is None or hazard.signal not in (Signal.DANGER, Signal.WARNING):
        return False
    return hazard.signal is Signal.DANGER or tells_of(step, hazard)
