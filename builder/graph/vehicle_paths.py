"""In which states of the vehicle every step can be entered: the paths of a tree and those states.

In: a tree, the shop's conditions, procedures and modules, and the steps at which other trees come
in. Out: `VehiclePaths`, with every step as a walk can arrive there and the shortest path to it.

A procedure is followed step by step where it is run, and so is each check that verifies a fix. Any
result of a verification may pass or fail; one that fails goes to `still_there`, or else to the
first check of the tree that verifies. A walk enters a tree with the vehicle in normal state; it
leaves by an end or a handoff, and then everything goes back to normal. So it does once a repair is
done: each verification begins in normal state. After the fix of another tree a walk resumes at the
step that handed off to it, in normal state too. A step that is used up is
left in the states in which it is reached, as nothing is begun. How often a step was done isn't
counted: a step is taken to be used up wherever it can be reached again, so a few paths are
followed that no walk takes, but none is left out. If there are too many, `whole` is false.
"""

from collections import deque
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from builder.graph.moves import Move, Place
from builder.graph.routes import ExitKind, exits
from builder.graph.run_frames import PathKnowledge
from builder.graph.step_entry import StepEntry
from builder.graph.vehicle_moves import Follower
from builder.graph.vehicle_states import States
from builder.model.checks import Check
from builder.model.tree import Tree

MOST_PLACES = 4000  # a tree of 40 steps has about 200


@dataclass(frozen=True, slots=True)
class VehiclePaths:
    """Every step with the states in which a walk arrives, and all moves between them."""

    starts: tuple[Place, ...]  # without the steps at which a walk resumes
    moves_from: Mapping[Place, tuple[Move, ...]]
    entries: Mapping[Place, StepEntry]
    arrived_by: Mapping[Place, Move | None]  # on the shortest path; None where a walk comes in
    whole: bool  # false where there are too many

    def path_to(self, place: Place) -> tuple[Place, ...]:
        """Return the shortest path to a place, from a start."""
        path = [place]
        while move := self.arrived_by[path[-1]]:
            path.append(move.source)
        return tuple(path[::-1])


def names_states(tree: Tree) -> bool:
    """Whether the states along a tree's paths can be told apart at all."""
    steps = tree.steps.values()
    return any(step.needs or step.hook_up or _runs_procedure(step.body) for step in steps)


def _runs_procedure(body: object) -> bool:
    return isinstance(body, Check) and body.by is not None


def vehicle_paths(
    tree: Tree,
    known: PathKnowledge,
    entered: Iterable[str] = (),
    arriving: Iterable[States] = ((),),
) -> VehiclePaths:
    """Follow every path of a tree; `arriving` are the states in which a walk may come in.

    A tree is entered with the vehicle in normal state, a procedure in any power state.
    """
    names = dict.fromkeys((str(tree.start.id), *map(str, entered)))
    starts = [
        Place(name, states=states) for name in names if name in tree.steps for states in arriving
    ]
    search = _Search(tree, known, (*starts, *map(Place, resumed_at(tree))))
    search.follow(search.starts)
    while search.whole and (used_up := [*search.used_up()]):
        search.follow(used_up)
    return VehiclePaths(
        starts=tuple(starts),
        moves_from=search.moves_from,
        entries=search.follower.entries,
        arrived_by=search.arrived_by,
        whole=search.whole,
    )


def resumed_at(tree: Tree) -> Iterator[str]:
    """Yield the steps that hand off to another tree: a walk comes back to them."""
    for step in tree.steps.values():
        if any(exit_.branch.tree for exit_ in exits(step)):
            yield str(step.id)


class _Search:
    """The places met so far, nearest first."""

    def __init__(self, tree: Tree, known: PathKnowledge, starts: Iterable[Place]) -> None:
        self.follower = Follower(tree, known)
        self.starts = tuple(dict.fromkeys(starts))
        self.moves_from: dict[Place, tuple[Move, ...]] = {}
        self.arrived_by: dict[Place, Move | None] = dict.fromkeys(self.starts)
        self.waiting: dict[Place, tuple[Move, ...]] = {}  # the moves by `spent`, not yet taken
        self.whole = True

    def follow(self, places: Iterable[Place]) -> None:
        """Follow all moves from some places but those by `spent`."""
        queue = deque(places)
        while queue:
            place = queue.popleft()
            if place not in self.moves_from:
                if len(self.moves_from) == MOST_PLACES:
                    self.whole = False
                    return
                self._take_moves(place)
            for move in self.moves_from[place]:
                if move.to is not None and move.to not in self.arrived_by:
                    self.arrived_by[move.to] = move
                    queue.append(move.to)

    def _take_moves(self, place: Place) -> None:
        moves = tuple(self.follower.moves_from(place))
        usual = tuple(move for move in moves if move.route.exit.kind is not ExitKind.SPENT)
        self.moves_from[place] = usual
        if len(usual) < len(moves):
            self.waiting[place] = tuple(move for move in moves if move not in usual)

    def used_up(self) -> Iterator[Place]:
        """Take the moves by `spent` from each place that a walk reaches after the same step."""
        groups: dict[tuple[object, str], list[Place]] = {}
        for place in self.moves_from:
            if self.follower.step_at(place).spent:
                groups.setdefault((place.calls, place.step), []).append(place)
        for places in groups.values():
            if any(place in self.waiting for place in places):
                again = self._reached_from(places)
                for place in [one for one in places if one in self.waiting and one in again]:
                    self.moves_from[place] += self.waiting.pop(place)
                    yield place

    def _reached_from(self, places: Iterable[Place]) -> set[Place]:
        reached: set[Place] = set()
        stack = [move.to for place in places for move in self.moves_from[place]]
        while stack:
            place = stack.pop()
            if place is not None and place not in reached:
                reached.add(place)
                stack += [move.to for move in self.moves_from.get(place, ())]
        return reached
