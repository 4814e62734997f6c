"""Whether what must come first does come first on every path.

In: the moves of a tree and what meets a requirement. Out: `ReachedUnmet`, the places a walk can
reach with the requirement unmet, each with its path; and for a handoff, the steps from which that
can happen.

The proof removes the exits that meet the requirement: what a walk can still reach from a start, or
by an exit that undoes the requirement, it reaches unmet.
"""

from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from builder.graph.deeds import Effect, all_deeds, effect
from builder.graph.moves import Move, Moves, Place
from builder.graph.requirements import Requirement
from builder.graph.routes import Exit
from builder.model.tree import Deed, Step

MoveTest = Callable[[Move], bool]


@dataclass(frozen=True, slots=True)
class ReachedUnmet:
    """The places that a walk can reach with something unmet."""

    arrived_by: Mapping[Place, Move | None]  # the move that first led there; None at a start
    undoing: tuple[Move, ...]  # the moves that undo it

    def path_to(self, place: Place) -> list[str]:
        """Return the steps that lead there, from a start or from the step that undid it."""
        return [one.step for one in self.places_to(place)]

    def places_to(self, place: Place) -> list[Place]:
        """Return the places that lead there, likewise."""
        places = [place]
        move = self.arrived_by[place]
        while move:
            places.append(move.source)
            move = None if move in self.undoing else self.arrived_by[move.source]
        return places[::-1]


def reached_unmet(
    moves_from: Mapping[Place, tuple[Move, ...]],
    starts: Iterable[Place],
    meets: MoveTest,
    undoing: Iterable[Move] = (),
) -> ReachedUnmet:
    """Follow every walk that does not meet it, from the starts and from what undoes it.

    A place without moves is where the paths were given up, as there are too many.
    """
    arrived_by: dict[Place, Move | None] = dict.fromkeys(starts)
    undone = tuple(undoing)
    queue = deque(
        move for place in arrived_by for move in moves_from.get(place, ()) if not meets(move)
    )
    queue.extend(undone)
    while queue:
        move = queue.popleft()
        if move.to is not None and move.to not in arrived_by:
            arrived_by[move.to] = move
            queue.extend(after for after in moves_from.get(move.to, ()) if not meets(after))
    return ReachedUnmet(arrived_by, undone)


def with_effect(steps: Mapping[str, Step], requirement: Requirement, wanted: Effect) -> MoveTest:
    """Return a test whether a move has an effect on the requirement."""
    deeds = (deed for step in steps.values() for deed in all_deeds(step))
    if not affect(deeds, requirement):
        return lambda _move: wanted is Effect.KEPT

    def has_it(move: Move) -> bool:
        return effect(steps[move.source.step], move.route.exit, requirement) is wanted

    return has_it


def affect(deeds: Iterable[Deed], requirement: Requirement) -> bool:
    """Whether one of some deeds meets a requirement or undoes it."""
    return any(requirement.is_met_by(deed) or deed.verb in requirement.undone_by for deed in deeds)


def unmet_origins(
    predecessors: Mapping[str, list[str]], step: Step, exit_: Exit, requirement: Requirement
) -> frozenset[str]:
    """Return the steps from which a walk can leave by one exit with the requirement unmet.

    `predecessors` comes from `unmet_predecessors`. A walk that begins at a returned step has not
    met it yet. A step with a `!` before its name has undone it, so the walk lacks it wherever it
    began.
    """
    here = effect(step, exit_, requirement)
    if here is not Effect.KEPT:
        return frozenset() if here is Effect.MET else frozenset({f"!{step.id}"})
    origins: set[str] = set()
    stack: list[str] = [step.id]
    while stack:
        name = stack.pop()
        if name not in origins:
            origins.add(name)
            stack += predecessors.get(name, ())
    return frozenset(map(str, origins))


def unmet_predecessors(
    moves: Moves, steps: Mapping[str, Step], requirement: Requirement
) -> dict[str, list[str]]:
    """Return by step the steps before it from which a walk arrives with the requirement unmet."""
    predecessors: dict[str, list[str]] = defaultdict(list)
    for name, routes in moves.routes.items():
        for route in routes:
            here = effect(steps[name], route.exit, requirement)
            if route.to is not None and here is not Effect.MET:
                mark = "!" if here is Effect.UNDONE else ""
                predecessors[route.to].append(f"{mark}{name}")
    return predecessors
