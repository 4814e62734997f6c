"""The ways back of a tree as laps: back to an earlier step, and from there the usual way again.

In: a `Tree` and its `Course`. Out: `Laps`: those taken by chance, and those that a walk has behind
it when it leaves a step by `spent`.

A step is spent when a walk comes to it once more than `at_most` allows. What share of the walks
leaves it by `spent` is what the weights of the ends beyond it come to. Those walks have done the
step `at_most` times and gone round as often. The others have not used it up: of them

    c**k / (1 + c + c**2 + ... + c**n)

have gone round k times, where c is the chance of the way back and n the rounds that use nothing up
(see `rounds`). By the chance, c**(n + 1) of the walks use the step up; where that and the weights
are more than twofold apart, the check tells of it (rule `chance-against-weights`). A way back
without a chance is taken by none but the walks that leave by `spent`.
"""

from collections import deque
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.moves import Move, Moves, Place, moves_of
from builder.graph.routes import ExitKind
from builder.model.tree import Tree
from builder.plan.course import Course
from builder.plan.rounds import Bound, rounds

NOT_FOLLOWED = frozenset({ExitKind.SPENT, ExitKind.STILL_THERE, ExitKind.COULD_NOT})


@dataclass(frozen=True, slots=True)
class Lap:
    """One way round: from a step by others back to one passed before, and on to it again."""

    source: str
    between: tuple[str, ...]  # steps done on the way back
    to: str  # the earlier step, or the source itself
    rounds: Fraction  # how often it is gone round, on the average or (spent) always


@dataclass(frozen=True, slots=True)
class Laps:
    """The laps of a tree by the step from which they lead back."""

    by_chance: Mapping[str, tuple[Lap, ...]]
    # By the source of laps, the bounded steps that they use up, and by how many of its walks.
    used_up: Mapping[str, Mapping[str, Fraction]]
    spent: Mapping[str, Lap]
    passed: Mapping[str, frozenset[str]]  # steps that every walk to a step has come by, and itself


def laps(tree: Tree, along: Course) -> Laps:
    """Find the laps of a tree; where there is more than one way back, the one of fewest steps."""
    passed = _passed(along)
    ways = moves_of(tree)
    found = {step: _by_chance(tree, ways, step, passed) for step in along.order}
    spent: dict[str, Lap] = {}
    for step in along.order:
        usual = (
            move
            for move in ways.moves_from(Place(step))
            if move.route.exit.kind not in NOT_FOLLOWED
        )
        round_ = _way_round(ways, usual, passed[step]) if tree.steps[step].spent else None
        if round_:
            spent[step] = Lap(step, *round_, Fraction(most_times(tree, step) or 1))
    return Laps(
        by_chance={step: laps for step, (laps, _) in found.items() if laps},
        used_up={step: used_up for step, (laps, used_up) in found.items() if laps},
        spent=spent,
        passed=passed,
    )


def most_times(tree: Tree, step: str) -> int | None:
    """Return how often one walk may do a step: `at_most`, or the length of its list if known."""
    asked = tree.steps[step]
    if asked.at_most is not None:
        return int(asked.at_most)
    items = tree.lists.get(asked.each[1]) if asked.each else None
    return len(items) if items else None


def _passed(along: Course) -> dict[str, frozenset[str]]:
    found: dict[str, frozenset[str]] = {}
    for step in along.order:
        before = [found[way.source] for way in along.into[step]]
        found[step] = frozenset({step}).union(frozenset.intersection(*before) if before else ())
    return found


def _by_chance(
    tree: Tree, ways: Moves, step: str, passed: Mapping[str, frozenset[str]]
) -> tuple[tuple[Lap, ...], Mapping[str, Fraction]]:
    """Return the laps of the results that state a chance, and how often they use up what bounds.

    A way that comes back nowhere is no lap.
    """
    found: list[tuple[tuple[str, ...], str, Fraction]] = []
    for move in ways.moves_from(Place(step)):
        result = move.route.exit.result
        if result and result.chance and (round_ := _way_round(ways, [move], passed[step])):
            found.append((*round_, Fraction(result.chance)))
    usual = [sorted(s for s in passed[step] if to in passed[s] and s != step) for _, to, _ in found]
    done = [(*lap[0], *again, step) for lap, again in zip(found, usual, strict=True)]
    often = rounds([chance for _, _, chance in found], list(_bounds(tree, done, passed[step])))
    made = zip(found, often.rounds, strict=True)
    return tuple(Lap(step, between, to, n) for (between, to, _), n in made), often.used_up


def _way_round(
    ways: Moves, first: Iterable[Move], passed: frozenset[str]
) -> tuple[tuple[str, ...], str] | None:
    """Return the steps up to the first step that was passed before, and that step."""
    waiting: deque[tuple[Move, tuple[str, ...]]] = deque((move, ()) for move in first)
    seen: set[Place] = set()
    while waiting:
        move, between = waiting.popleft()
        place = move.to
        if place is None or place in seen:
            continue
        if place.step in passed:
            return between, place.step
        seen.add(place)
        waiting += [
            (on, (*between, place.step))
            for on in ways.moves_from(place)
            if on.route.exit.kind not in NOT_FOLLOWED
        ]
    return None


def _bounds(tree: Tree, laps: Sequence[Sequence[str]], passed: Container[str]) -> Iterator[Bound]:
    """Yield what `at_most` leaves for laps; a step that was passed before was done once."""
    for step in dict.fromkeys(step for lap in laps for step in lap):
        most = most_times(tree, step)
        if most:
            on = frozenset(at for at, lap in enumerate(laps) if step in lap)
            yield Bound(step, most - (step in passed), on)
