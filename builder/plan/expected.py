"""The expected minutes up to each step, and from each step on.

In: a tree's `Course`, `Chances` and `Laps`, and what each step costs. Out: `Expected`, exact.

Up to a step, the minutes are the average over the ways to it, by their share of the walks. A lap
adds what lies between: the steps on the way back, and the usual way again up to where it began. A
walk that leaves a step by `spent` has done that step as often as `at_most` allows and has gone
round as often; laps by chance through the same step are part of that and are not counted again.
On a round, a step that was left by `spent` is used up and not done once more. What `spent` means,
with its formula, stands in `laps`.

The tries that a way back takes are counted for the step from which it leads: where ways back of
several steps do the same bounded step again, fewer of them fit into one walk than is counted here.
Walks by dice (`tests/bench/walks.py`) show by how much: 2 % in the worst tree of the demo.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from builder.graph.routes import ExitKind
from builder.plan.chances import Chances
from builder.plan.course import Course, WayOn
from builder.plan.laps import Lap, Laps

NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True)
class Expected:
    """Minutes on the average, by step."""

    up_to: Mapping[str, Fraction]  # from the start until the step is done
    left: Mapping[str, Fraction]  # from arriving at the step until the end


@dataclass(frozen=True, slots=True)
class _Sums:
    """What is known so far, from the start down."""

    cost: Mapping[str, Fraction]
    arriving: dict[str, Fraction] = field(default_factory=dict)  # until a step is begun
    once: dict[str, Fraction] = field(default_factory=dict)  # until it is done the first time
    done: dict[str, Fraction] = field(default_factory=dict)  # until it is done the last time
    begun_again: dict[str, Fraction] = field(default_factory=dict)  # as `arriving`, on a round
    done_again: dict[str, Fraction] = field(default_factory=dict)  # as `done`, on a round
    again: dict[Lap, Fraction] = field(default_factory=dict)  # all rounds of a lap
    spent: dict[str, Fraction] = field(default_factory=dict)  # beside, when it is left by `spent`

    def length(self, lap: Lap) -> Fraction:
        """Go round once: what lies between, and the usual way again."""
        there = total(self.cost[step] for step in lap.between)
        return (
            there + self.begun_again[lap.source] + self.cost[lap.source] - self.begun_again[lap.to]
        )


def total(minutes: Iterable[Fraction]) -> Fraction:
    """Add up exactly."""
    return sum(minutes, NOTHING)


def expected(along: Course, often: Chances, found: Laps, cost: Mapping[str, Fraction]) -> Expected:
    """Work out the expected minutes; `cost` is what doing a step once takes."""
    sums = _Sums(cost)
    for step in along.order:
        into = _shares(along.into[step], often)
        sums.arriving[step] = total(
            share * (sums.done[way.source] + _on(way, sums, found)) for way, share in into
        )
        sums.once[step] = sums.arriving[step] + cost[step]
        sums.begun_again[step] = total(
            share
            * (sums.begun_again if way.exit.kind is ExitKind.SPENT else sums.done_again)[way.source]
            for way, share in into
        )
        laps = found.by_chance.get(step, ())
        for lap in laps:
            sums.again[lap] = lap.rounds * sums.length(lap)
        rounds = total(sums.again[lap] for lap in laps)
        sums.done[step] = sums.once[step] + rounds
        sums.done_again[step] = sums.begun_again[step] + cost[step] + rounds
        if step in found.spent:
            sums.spent[step] = _spent(found.spent[step], found, sums)
    return Expected(sums.done, _left(along, often, found, sums))


def _on(way: WayOn, sums: _Sums, found: Laps) -> Fraction:
    """Return what a way adds to the minutes up to its source.

    A walk that goes on by `spent` has gone round so and so often, not as often as the average.
    """
    if way.exit.kind is not ExitKind.SPENT:
        return NOTHING
    through = [lap for lap in sums.again if _through(lap, way.source, found)]
    return sums.spent.get(way.source, NOTHING) - total(sums.again[lap] for lap in through)


def _shares(ways: Iterable[WayOn], often: Chances) -> list[tuple[WayOn, Fraction]]:
    """Pair ways with their shares of the walks that take one of them; even where none does."""
    ways = list(ways)
    all_of_them = total(often.routes[way.key] for way in ways)
    if not all_of_them:
        return [(way, Fraction(1, len(ways))) for way in ways]
    return [(way, often.routes[way.key] / all_of_them) for way in ways]


def _spent(lap: Lap, found: Laps, sums: _Sums) -> Fraction:
    """Return what a walk that leaves a step by `spent` has done beside doing it once.

    All its rounds, less the last doing of the step: when it comes up once more, it is not begun.
    """
    here = lap.source
    inner = [one for one in sums.again if _through(one, here, found) and one.source != here]
    on_it = total(sums.again[one] for one in inner if lap.to in found.passed[one.source])
    return lap.rounds * (sums.length(lap) - on_it) - sums.cost[here]


def _through(lap: Lap, step: str, found: Laps) -> bool:
    """Whether every walk to a step has passed the source of a lap that does the step again."""
    again = lap.to in found.passed[step] and step in found.passed[lap.source]
    return lap.source in found.passed[step] and (step in lap.between or again)


def _left(along: Course, often: Chances, found: Laps, sums: _Sums) -> dict[str, Fraction]:
    left: dict[str, Fraction] = {}
    spent = [
        way for step in along.order for way in along.out[step] if way.exit.kind is ExitKind.SPENT
    ]
    for step in reversed(along.order):
        here = often.steps[step]
        goes_on = 1 - often.ends[step] / here if often.ends.get(step) else 1
        onward = total(
            share * (_after(way, sums) + (left[way.to] if way.to else NOTHING))
            for way, share in _shares(along.out[step], often)
        )
        left[step] = sums.cost[step] + goes_on * onward
        for lap in found.by_chance.get(step, ()):
            other = [way for way in spent if _through(lap, way.source, found)]
            by_chance = (
                1 - total(often.routes[way.key] for way in other) / here if here else not other
            )
            left[step] += by_chance * sums.again[lap]
    return left


def _after(way: WayOn, sums: _Sums) -> Fraction:
    return sums.spent.get(way.source, NOTHING) if way.exit.kind is ExitKind.SPENT else NOTHING
