"""How often the ways back of one step are taken, within what `at_most` allows.

In: the chance of each way back on an arrival at the step, and how many rounds each bounded step on
them allows. Out: `Rounds`, exact.

A walk takes a way back with its chance on every arrival, until it goes on or a bounded step is used
up. With a single way back of chance c that is allowed n times, c**(n + 1) of the walks use it up,
and of the others

    c**k / (1 + c + c**2 + ... + c**n)

go round k times. With more ways back of one step it is the same over all that may be taken in turn:
rounds k1, k2, ... of chances c1, c2, ... happen in (k1 + k2 + ...)! / (k1! k2! ...) orders, each
with the chance c1**k1 * c2**k2 * ...; the multinomial theorem, from memory.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import factorial, prod
from typing import NamedTuple

MOST_COUNTS = 1_000  # different counts of rounds; where there would be more, bounds do not count
NONE, ALL = Fraction(0), Fraction(1)


class Bound(NamedTuple):
    """A step that may be done only so often."""

    step: str
    left: int  # rounds that it allows
    on: frozenset[int]  # the ways back that do it, by their place in the list of chances


@dataclass(frozen=True, slots=True)
class Rounds:
    """What becomes of the walks that come to the step."""

    rounds: tuple[Fraction, ...]  # of each way back, on the average of the walks that go on
    used_up: dict[str, Fraction]  # the share of all walks that uses up each bounded step


class _Counted(NamedTuple):
    """Rounds of the bounded ways back, and how many arrivals a walk has with just these behind."""

    rounds: Sequence[int]
    arrivals: Fraction


def rounds(chances: Sequence[Fraction], bounds: Sequence[Bound] = ()) -> Rounds:
    """Work out the rounds; bounds are given in the order in which a walk comes to them.

    Chances that come to more than 1 together count in proportion. Ways back without a bound that
    are taken on every arrival would never end; they count 0, and the check reports it.
    """
    all_of_them = sum(chances, NONE)
    chances = [chance / max(all_of_them, ALL) for chance in chances]
    most = {
        way: min(bound.left for bound in bounds if way in bound.on)
        for way in sorted(frozenset().union(*(bound.on for bound in bounds)))
    }
    if prod(left + 1 for left in most.values()) > MOST_COUNTS:
        return rounds(chances)
    free = sum((chance for way, chance in enumerate(chances) if way not in most), NONE)
    if free == 1:
        return Rounds((NONE,) * len(chances), {})
    counted = list(_counted(chances, bounds, most, free))
    return Rounds(_on_average(chances, most, free, counted), _used_up(chances, bounds, counted))


def _counted(
    chances: Sequence[Fraction], bounds: Sequence[Bound], most: dict[int, int], free: Fraction
) -> Iterator[_Counted]:
    """Yield all rounds that the bounds allow; the others come between them any number of times."""
    for some in product(*(range(left + 1) for left in most.values())):
        behind = [0] * len(chances)
        for way, taken in zip(most, some, strict=True):
            behind[way] = taken
        if not any(_taken(behind, bound) > bound.left for bound in bounds):
            orders = Fraction(factorial(sum(some)), prod(map(factorial, some)))
            each = prod((chances[way] ** behind[way] for way in most), start=ALL)
            yield _Counted(behind, orders * each / (1 - free) ** (sum(some) + 1))


def _taken(rounds: Sequence[int], bound: Bound) -> int:
    return sum(rounds[way] for way in bound.on)


def _on_average(
    chances: Sequence[Fraction], most: dict[int, int], free: Fraction, counted: Sequence[_Counted]
) -> tuple[Fraction, ...]:
    every = sum((one.arrivals for one in counted), NONE)
    arrivals = sum(((sum(one.rounds) + 1) * one.arrivals for one in counted), NONE) / every
    bounded = {
        way: sum((one.rounds[way] * one.arrivals for one in counted), NONE) / every for way in most
    }
    return tuple(
        bounded.get(way, arrivals * chance / (1 - free)) for way, chance in enumerate(chances)
    )


def _used_up(
    chances: Sequence[Fraction], bounds: Sequence[Bound], counted: Sequence[_Counted]
) -> dict[str, Fraction]:
    """Add up, over all arrivals, the chance that the next way back is one too many."""
    shares: dict[str, Fraction] = dict.fromkeys((bound.step for bound in bounds), NONE)
    for one in counted:
        for way, chance in enumerate(chances):
            full = [b for b in bounds if way in b.on and _taken(one.rounds, b) == b.left]
            if full:
                shares[full[0].step] += one.arrivals * chance
    return shares
