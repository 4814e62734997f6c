"""The ways back of a tree as laps: back to an earlier step, and from there the usual way again.

In: a `Tree` and its `Course`. Out: `Laps`: those taken by chance, and those that a walk has behind
it when it leaves a step by `spent`.
"""

from collections import deque
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.moves import Move, Moves, Place, moves_of
from builder.graph.routes import ExitKind
from builder.model.tree import Tree
from builder.plan.course import Course

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
    spent: Mapping[str, Lap]
    passed: Mapping[str, frozenset[str]]  # steps that every walk to a step has come by, and itself


def laps(tree: Tree, along: Course) -> Laps:
    """Find the laps of a tree; where there is more than one way back, the one of fewest steps."""
    passed = _passed(along)
    ways = moves_of(tree)
    by_chance = {step: tuple(_by_chance(tree, ways, step, passed)) for step in along.order}
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
    return Laps({step: found for step, found in by_chance.items() if found}, spent, passed)


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
) -> Iterable[Lap]:
    """Yield the laps of the results that state a chance; one that comes back nowhere is none."""
    found: list[tuple[tuple[str, ...], str, Fraction]] = []
    for move in ways.moves_from(Place(step)):
        result = move.route.exit.result
        if result and result.chance and (round_ := _way_round(ways, [move], passed[step])):
            between, to = round_
            most = _most_rounds(tree, step, between, [s for s in passed[step] if to in passed[s]])
            found.append((between, to, rounds(Fraction(result.chance), most)))
    for (between, to, _), often in zip(found, together([one[2] for one in found]), strict=True):
        yield Lap(step, between, to, often)


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


def _most_rounds(
    tree: Tree, source: str, between: Iterable[str], again: Iterable[str]
) -> int | None:
    """Return how often `at_most` allows a lap; a step that was passed before was done once."""
    steps = dict.fromkeys(between, 0) | dict.fromkeys((source, *again), 1)
    bounds = [most - once for step, once in steps.items() if (most := most_times(tree, step))]
    return min(bounds, default=None)


def rounds(chance: Fraction, most: int | None) -> Fraction:
    """Return how often a lap is gone round on the average, taken with `chance` on every arrival.

    The sum of chance, its square, its cube ... up to `most` terms; without a bound the whole
    geometric series. A lap that is always taken and has no bound would never end; it counts 0, and
    the check reports it.
    """
    if chance == 1:
        return Fraction(most or 0)
    endless = chance / (1 - chance)
    return endless if most is None else endless * (1 - chance**most)


def together(alone: list[Fraction]) -> list[Fraction]:
    """Return how often each lap of one step is gone round when every arrival may take any of them.

    A lap that alone is gone round R times is taken on R / (1 + R) of the arrivals. Where the laps
    leave no arrival that goes on, they are counted one by one.
    """
    shares = [often / (1 + often) for often in alone]
    on = 1 - sum(shares, Fraction(0))
    return [share / on for share in shares] if on > 0 else alone
