"""Whether what must come first does come first on every path.

In: the moves of a tree and what brings something about. Out: `Lacking`, the places to which a
walk can come without it, each with its path; and for a hand-over, from where that can happen.

The proof takes the providing exits out: what can still be reached from a start, or from a step that
undoes the thing, is reached without it.
"""

from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from builder.graph.paths import Move, Paths, Place
from builder.graph.requirements import Requirement
from builder.graph.routes import Exit, ExitKind, Route
from builder.model.tree import Check, Step

Brings = Callable[[Move], bool]
Onward = Mapping[Place, tuple[Move, ...]]  # the moves from every place


@dataclass(frozen=True, slots=True)
class Lacking:
    """The places to which a walk can come without something."""

    came: Mapping[Place, Move | None]  # with the move that first led there; None at a start
    undoing: frozenset[Place]  # the places that undo it

    def trail(self, place: Place) -> list[str]:
        """Return the steps that lead there, from a start or from the step that undid it."""
        steps = [place.step]
        move = self.came[place]
        while move:
            steps.append(move.source.step)
            move = None if move.source in self.undoing else self.came[move.source]
        return steps[::-1]


def lacking(
    onward: Onward, starts: Iterable[Place], brings: Brings, undoing: Iterable[Place] = ()
) -> Lacking:
    """Follow every walk that does not bring it about, from the starts and from what undoes it."""
    came: dict[Place, Move | None] = dict.fromkeys(starts)
    undone = frozenset(undoing)
    waiting = deque(move for place in came for move in onward[place] if not brings(move))
    waiting.extend(move for place in undone for move in onward[place])
    while waiting:
        move = waiting.popleft()
        if move.to is not None and move.to not in came:
            came[move.to] = move
            waiting.extend(after for after in onward[move.to] if not brings(after))
    return Lacking(came, undone)


def leaves_done(step: Step, move: Move) -> bool:
    """Whether a move leaves a step with its work achieved.

    That is by a `done` result, or where none is marked by any; a step that is used up has been left
    before, one that could not be done has not been done.
    """
    way = move.route.exit
    if way.kind is ExitKind.COULD_NOT:
        return False
    marked = isinstance(step.body, Check) and any(result.done for result in step.body.results)
    return not marked or bool(way.result and way.result.done)


def is_so_after(step: Step, requirement: Requirement, before: bool) -> bool:
    """Whether a requirement is met after all that a step does, in the order of its list."""
    for deed in step.does:
        if deed.verb in requirement.undone_by:
            before = False
        elif deed.verb == requirement.brought_by:
            before = True
    return before


def brings(steps: Mapping[str, Step], requirement: Requirement) -> Brings:
    """Return whether a move leaves behind a step that met the requirement."""
    bringing = {name for name, step in steps.items() if is_so_after(step, requirement, False)}

    def brought(move: Move) -> bool:
        name = move.source.step
        return name in bringing and leaves_done(steps[name], move)

    return brought


def undoes(step: Step, requirement: Requirement) -> bool:
    """Whether a requirement is no longer met after a step."""
    return not is_so_after(step, requirement, True)


def touches(steps: Mapping[str, Step], requirement: Requirement) -> bool:
    """Whether any step meets a requirement or undoes it."""
    verbs = {requirement.brought_by, *requirement.undone_by}
    return any(deed.verb in verbs for step in steps.values() for deed in step.does)


def unmet_before(
    leading: Mapping[str, list[str]],
    steps: Mapping[str, Step],
    step: Step,
    way: Exit,
    requirement: Requirement,
) -> frozenset[str]:
    """Return the steps from which a walk can leave by one way out with the requirement unmet.

    `leading` is what `leading_unmet` says. A walk that begins at a step returned has not met it
    yet; a step with a `!` before its name has undone it, so that the walk lacks it however it
    began.
    """
    brought = brings(steps, requirement)
    if brought(Move(Place(step.id), None, Route(step.id, None, way))):
        return frozenset()
    if undoes(step, requirement):
        return frozenset({f"!{step.id}"})
    found: set[str] = set()
    waiting: list[str] = [step.id]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += leading.get(name, ())
    return frozenset(map(str, found))


def leading_unmet(
    paths: Paths, steps: Mapping[str, Step], requirement: Requirement
) -> dict[str, list[str]]:
    """Return by step the steps before it from which a walk comes there with it unmet."""
    brought = brings(steps, requirement)
    leading: dict[str, list[str]] = defaultdict(list)
    for name, routes in paths.routes.items():
        undone = undoes(steps[name], requirement)
        for route in routes:
            if route.to is not None and undone:
                leading[route.to].append(f"!{name}")
            elif route.to is not None and not brought(Move(Place(name), Place(route.to), route)):
                leading[route.to].append(name)
    return leading
