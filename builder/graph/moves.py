"""Where a walk can go next, with the memory that `back` needs.

In: a `Tree`. Out: `Moves`, which lists the moves from a `Place`. An action that goes `back` returns
to the step that led to it and to no other, so its place remembers that step; every other step is
one place. A branch to nowhere counts as a branch to the step with the closest name, and a step with
a text error as leading anywhere: one typo must not look like ten.
"""

from collections import defaultdict, deque
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, NamedTuple, TypeVar

from builder.graph.routes import Exit, ExitKind, Route, exits_of, list_step, routes_by
from builder.model.checks import Branch
from builder.model.conditions import VehicleState
from builder.model.text import Text
from builder.model.tree import Step, Tree

Node = TypeVar("Node")


class Call(NamedTuple):
    """A procedure that a step runs, or one check of the verification of a fix."""

    step: str  # the check with `by`, or the fix
    verification: int | None = None  # which of those of the fix


class Place(NamedTuple):
    """A step of a walk and, for an action that goes `back`, the step it goes back to.

    Where the states along the paths are followed, it also has the calls that the step is in, and
    the states in which a walk arrives.
    """

    step: str
    caller: str | None = None
    calls: tuple[Call, ...] = ()  # the outermost first
    states: tuple[VehicleState, ...] = ()


class Move(NamedTuple):
    """One move of a walk; `to` is None where it leaves the tree."""

    source: Place
    to: Place | None
    route: Route


@dataclass(frozen=True, slots=True)
class Moves:
    """The moves of a tree."""

    routes: Mapping[str, tuple[Route, ...]]  # by the step they leave
    returning: frozenset[str]  # actions that go `back`
    exits: tuple[tuple[Step, Exit], ...]  # of every step, in the order of the file

    def moves_from(self, place: Place) -> Iterator[Move]:
        """Yield every move from a place; `back` only to its caller where that is known."""
        for route in self.routes.get(place.step, ()):
            if route.exit.kind is ExitKind.BACK and place.caller not in (None, route.to):
                continue
            yield Move(place, self._target(route), route)

    def _target(self, route: Route) -> Place | None:
        if route.to is None:
            return None
        is_back = route.exit.kind is ExitKind.BACK
        caller = route.source if route.to in self.returning and not is_back else None
        return Place(route.to, caller)

    def reachable(self, starts: Iterable[Place]) -> dict[Place, tuple[Move, ...]]:
        """Return every place a walk from `starts` reaches, nearest first, with its moves."""
        moves: dict[Place, tuple[Move, ...]] = {}
        queue = deque(starts)
        while queue:
            place = queue.popleft()
            if place not in moves:
                moves[place] = tuple(self.moves_from(place))
                queue.extend(move.to for move in moves[place] if move.to is not None)
        return moves

    def previous_steps(self) -> Mapping[str, set[str]]:
        """Return by step the steps from which one move leads to it."""
        previous: dict[str, set[str]] = defaultdict(set)
        for name, step_routes in self.routes.items():
            for route in step_routes:
                if route.to is not None:
                    previous[route.to].add(name)
        return previous


def steps_leading_to(step: str, previous: Mapping[str, set[str]]) -> frozenset[str]:
    """Return every step from which a walk can reach a step, including that step.

    `previous` comes from `Moves.previous_steps`, once for all steps of a tree.
    """
    return frozenset(map(str, leading_to([step], previous)))


def leading_to(targets: Iterable[Node], previous: Mapping[Any, Collection[Node]]) -> set[Node]:
    """Return the targets and everything from which one of them can be reached.

    `previous` has by node the nodes from which one move leads to it.
    """
    known = set(targets)
    stack = [*known]
    while stack:
        new = [one for one in previous.get(stack.pop(), ()) if one not in known]
        known.update(new)
        stack += new
    return known


def moves_of(tree: Tree) -> Moves:
    """Collect the moves of a tree."""
    by_step: dict[str, list[Route]] = defaultdict(list)
    returning: set[str] = set()
    pairs = exits_of(tree)
    for route in routes_by(tree, pairs):
        by_step[route.source].append(route)
        if route.exit.kind is ExitKind.BACK:
            returning.add(str(route.source))
    for step, exit_ in pairs:
        if leads_nowhere(tree, step, exit_):
            targets = _closest_step(tree, exit_.branch)
            by_step[step.id] += [Route(step.id, to, exit_) for to in targets]
    for name in tree.broken & tree.steps.keys():
        anywhere = Exit(ExitKind.RESULT, Branch(Text("", tree.steps[name].at)))
        by_step[name] = [Route(name, to, anywhere) for to in (*tree.steps, None)]
    by_name = {name: tuple(step_routes) for name, step_routes in by_step.items()}
    return Moves(by_name, frozenset(returning), tuple(pairs))


def leads_nowhere(tree: Tree, step: Step, exit_: Exit) -> bool:
    """Whether an exit is to no step, or is `next` or `back` where that can't be."""
    branch = exit_.branch
    if branch.step in tree.steps:
        return False
    if branch.next_item:
        return not list_step(tree, step)
    if branch.back:
        return exit_.kind is not ExitKind.BACK or step.id == tree.start.id
    return not branch.leaves


def _closest_step(tree: Tree, branch: Branch) -> list[str | None]:
    return [*get_close_matches(branch.text, tree.steps, n=1)] or [None]
