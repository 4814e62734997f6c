"""Where a walk can go next, with the memory that `back` needs.

In: a `Tree`. Out: `Paths`, which tells the moves from a `Place`. An action that goes `back` returns
to the step that led to it and to no other, so its place remembers that step; every other step is
one place. A branch to nowhere is taken to mean the nearest step by name, a step with a mistake of
text to lead anywhere: one slip must not look like ten.
"""

from collections import defaultdict, deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import NamedTuple

from builder.graph.routes import Exit, ExitKind, Route, exits, routes
from builder.model.text import Text
from builder.model.tree import Branch, Tree


class Place(NamedTuple):
    """A step of a walk and, for an action that goes `back`, the step it goes back to."""

    step: str
    caller: str | None = None


class Move(NamedTuple):
    """One move of a walk; `to` is None where it leaves the tree."""

    source: Place
    to: Place | None
    route: Route


@dataclass(frozen=True, slots=True)
class Paths:
    """The moves of a tree."""

    routes: Mapping[str, tuple[Route, ...]]  # by the step they leave
    backs: frozenset[str]  # actions that go `back`

    def moves(self, place: Place) -> Iterator[Move]:
        """Every move from a place; `back` only to its caller where that is known."""
        for route in self.routes.get(place.step, ()):
            if route.exit.kind is ExitKind.BACK and place.caller not in (None, route.to):
                continue
            yield Move(place, self._arrival(route), route)

    def _arrival(self, route: Route) -> Place | None:
        if route.to is None:
            return None
        returns = route.exit.kind is ExitKind.BACK
        return Place(route.to, route.source if route.to in self.backs and not returns else None)

    def onward(self, starts: Iterable[Place]) -> dict[Place, tuple[Move, ...]]:
        """Every place that a walk from `starts` gets to, nearest first, with the moves from it."""
        found: dict[Place, tuple[Move, ...]] = {}
        waiting = deque(starts)
        while waiting:
            place = waiting.popleft()
            if place not in found:
                found[place] = tuple(self.moves(place))
                waiting.extend(move.to for move in found[place] if move.to is not None)
        return found

    def before(self, step: str) -> frozenset[str]:
        """Every step from which a walk can get to a step, itself included."""
        leading: dict[str, set[str]] = defaultdict(set)
        for name, found in self.routes.items():
            for route in found:
                leading[route.to or ""].add(name)
        known, waiting = {step}, [step]
        while waiting:
            new = leading[waiting.pop()] - known
            known |= new
            waiting += new
        return frozenset(map(str, known))


def paths(tree: Tree) -> Paths:
    """Collect the moves of a tree."""
    found: dict[str, list[Route]] = defaultdict(list)
    backs: set[str] = set()
    for route in routes(tree):
        found[route.source].append(route)
        if route.exit.kind is ExitKind.BACK:
            backs.add(str(route.source))
    for step in tree.steps.values():
        for way in exits(step):
            if _to_nowhere(tree, way):
                found[step.id] += [Route(step.id, to, way) for to in _meant(tree, way.branch)]
    for name in tree.broken & tree.steps.keys():
        anywhere = Exit(ExitKind.RESULT, Branch(Text("", tree.steps[name].at)))
        found[name] = [Route(name, to, anywhere) for to in (*tree.steps, None)]
    return Paths({name: tuple(ways) for name, ways in found.items()}, frozenset(backs))


def _to_nowhere(tree: Tree, way: Exit) -> bool:
    named = way.kind not in (ExitKind.BACK, ExitKind.NEXT) and not way.branch.tree
    return named and way.branch.step not in tree.steps


def _meant(tree: Tree, branch: Branch) -> list[str | None]:
    return [*get_close_matches(branch.text, tree.steps, n=1)] or [None]
