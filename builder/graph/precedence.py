"""Whether what must come first does come first on every path.

In: the moves of a tree and what meets a requirement. Out: `ReachedUnmet`, the places a walk can
reach with the requirement unmet, each with its path; and for a handoff, the steps from which that
can happen.

The proof removes the exits that meet the requirement: what a walk can still reach from a start, or
from a step that undoes the requirement, it reaches unmet.
"""

from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from builder.graph.moves import Move, Moves, Place
from builder.graph.requirements import Requirement
from builder.graph.routes import Exit, ExitKind, Route
from builder.model.checks import Check
from builder.model.tree import Step

MoveTest = Callable[[Move], bool]


@dataclass(frozen=True, slots=True)
class ReachedUnmet:
    """The places that a walk can reach with something unmet."""

    arrived_by: Mapping[Place, Move | None]  # the move that first led there; None at a start
    undoing: frozenset[Place]  # the places that undo it

    def path_to(self, place: Place) -> list[str]:
        """Return the steps that lead there, from a start or from the step that undid it."""
        steps = [place.step]
        move = self.arrived_by[place]
        while move:
            steps.append(move.source.step)
            move = None if move.source in self.undoing else self.arrived_by[move.source]
        return steps[::-1]


def reached_unmet(
    moves_from: Mapping[Place, tuple[Move, ...]],
    starts: Iterable[Place],
    meets: MoveTest,
    undoing: Iterable[Place] = (),
) -> ReachedUnmet:
    """Follow every walk that does not meet it, from the starts and from what undoes it."""
    arrived_by: dict[Place, Move | None] = dict.fromkeys(starts)
    undone = frozenset(undoing)
    queue = deque(move for place in arrived_by for move in moves_from[place] if not meets(move))
    queue.extend(move for place in undone for move in moves_from[place])
    while queue:
        move = queue.popleft()
        if move.to is not None and move.to not in arrived_by:
            arrived_by[move.to] = move
            queue.extend(after for after in moves_from[move.to] if not meets(after))
    return ReachedUnmet(arrived_by, undone)


def leaves_done(step: Step, move: Move) -> bool:
    """Whether a move leaves a step with its work done.

    That takes a result marked `done`, or any result where none is marked. A step that is used up
    was left before; a step that could not be done is not done.
    """
    exit_ = move.route.exit
    if exit_.kind is ExitKind.CANNOT_TEST:
        return False
    marked = isinstance(step.body, Check) and any(result.done for result in step.body.results)
    return not marked or bool(exit_.result and exit_.result.done)


def is_met_after(step: Step, requirement: Requirement, before: bool) -> bool:
    """Whether a requirement is met after all that a step does, in the order of its list."""
    for deed in step.does:
        if deed.verb in requirement.undone_by:
            before = False
        elif deed.verb == requirement.met_by:
            before = True
    return before


def meets(steps: Mapping[str, Step], requirement: Requirement) -> MoveTest:
    """Return a test whether a move leaves a step that met the requirement."""
    meeting = {name for name, step in steps.items() if is_met_after(step, requirement, False)}

    def leaves_met(move: Move) -> bool:
        name = move.source.step
        return name in meeting and leaves_done(steps[name], move)

    return leaves_met


def undoes(step: Step, requirement: Requirement) -> bool:
    """Whether a requirement is no longer met after a step."""
    return not is_met_after(step, requirement, True)


def affects(steps: Mapping[str, Step], requirement: Requirement) -> bool:
    """Whether any step meets a requirement or undoes it."""
    verbs = {requirement.met_by, *requirement.undone_by}
    return any(deed.verb in verbs for step in steps.values() for deed in step.does)


def unmet_origins(
    predecessors: Mapping[str, list[str]],
    steps: Mapping[str, Step],
    step: Step,
    exit_: Exit,
    requirement: Requirement,
) -> frozenset[str]:
    """Return the steps from which a walk can leave by one exit with the requirement unmet.

    `predecessors` comes from `unmet_predecessors`. A walk that begins at a returned step has not
    met it yet. A step with a `!` before its name has undone it, so the walk lacks it wherever it
    began.
    """
    leaves_met = meets(steps, requirement)
    if leaves_met(Move(Place(step.id), None, Route(step.id, None, exit_))):
        return frozenset()
    if undoes(step, requirement):
        return frozenset({f"!{step.id}"})
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
    leaves_met = meets(steps, requirement)
    predecessors: dict[str, list[str]] = defaultdict(list)
    for name, routes in moves.routes.items():
        undone = undoes(steps[name], requirement)
        for route in routes:
            if route.to is not None and undone:
                predecessors[route.to].append(f"!{name}")
            elif route.to is not None and not leaves_met(Move(Place(name), Place(route.to), route)):
                predecessors[route.to].append(name)
    return predecessors
