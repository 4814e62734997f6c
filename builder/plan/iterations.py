"""How often the loops of one step are taken, within what `at_most` allows.

In: the chance of each loop on a visit to the step, and how many iterations each limited step on
them allows. Out: `Iterations`, exact.

A walk takes a loop with its chance on every visit, until it goes on or a limited step is spent.
With a single loop of chance c that is allowed n times, c**(n + 1) of the walks spend it, and of the
others

    c**k / (1 + c + c**2 + ... + c**n)

go around k times. With several loops from one step it is the same over all that may be taken in
turn: iterations k1, k2, ... of chances c1, c2, ... come in (k1 + k2 + ...)! / (k1! k2! ...) orders,
each with the chance c1**k1 * c2**k2 * ...; the multinomial theorem, from memory.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import factorial, prod
from typing import NamedTuple

MAX_COMBINATIONS = 100  # of iteration counts; if there are more, limits are ignored
ZERO, ONE = Fraction(0), Fraction(1)


class VisitLimit(NamedTuple):
    """A step that may be done only so often."""

    step: str
    left: int  # iterations that it allows
    loops: frozenset[int]  # the loops that do it, by their place in the list of chances


@dataclass(frozen=True, slots=True)
class Iterations:
    """What happens to the walks that come to the step."""

    mean: tuple[Fraction, ...]  # of each loop, over the walks that go on
    spent: dict[str, Fraction]  # the share of all walks that spends each limited step


class _Combination(NamedTuple):
    """Iterations of the limited loops, and how many visits a walk makes with exactly these done."""

    iterations: Sequence[int]
    visits: Fraction


def expected_iterations(
    chances: Sequence[Fraction], limits: Sequence[VisitLimit] = ()
) -> Iterations:
    """Return the iterations; give the limits in the order in which a walk comes to them.

    Chances with a sum of more than 1 count in proportion. Loops without a limit that are taken on
    every visit would never end; they count 0, and the check reports it.
    """
    sum_of_chances = sum(chances, ZERO)
    chances = [chance / max(sum_of_chances, ONE) for chance in chances]
    most = {
        loop: min(limit.left for limit in limits if loop in limit.loops)
        for loop in sorted(frozenset().union(*(limit.loops for limit in limits)))
    }
    if prod(left + 1 for left in most.values()) > MAX_COMBINATIONS:
        return expected_iterations(chances)
    unlimited = sum((chance for loop, chance in enumerate(chances) if loop not in most), ZERO)
    if unlimited == 1:
        return Iterations((ZERO,) * len(chances), {})
    tightest = _tightest(limits)
    combinations = list(_combinations(chances, tightest, most, unlimited))
    mean = _mean_iterations(chances, most, unlimited, combinations)
    never: dict[str, Fraction] = dict.fromkeys((limit.step for limit in limits), ZERO)
    return Iterations(mean, never | _spent_shares(chances, tightest, combinations))


def _tightest(limits: Sequence[VisitLimit]) -> list[VisitLimit]:
    """Leave out limits that are never reached: another on the same loops is, at latest with them.

    A long loop in a tree with `at_most` on every step has hundreds of limits.
    """
    tightest: dict[frozenset[int], VisitLimit] = {}
    for limit in sorted(limits, key=lambda limit: limit.left):  # the first of equals comes first
        tightest.setdefault(limit.loops, limit)
    return [limit for limit in limits if tightest[limit.loops] is limit]


def _combinations(
    chances: Sequence[Fraction],
    limits: Sequence[VisitLimit],
    most: dict[int, int],
    unlimited: Fraction,
) -> Iterator[_Combination]:
    """Yield all iterations that the limits allow, with any number of unlimited loops between."""
    for counts in product(*(range(left + 1) for left in most.values())):
        iterations = [0] * len(chances)
        for loop, count in zip(most, counts, strict=True):
            iterations[loop] = count
        if not any(_visits_of(limit, iterations) > limit.left for limit in limits):
            orders = Fraction(factorial(sum(counts)), prod(map(factorial, counts)))
            each = prod((chances[loop] ** iterations[loop] for loop in most), start=ONE)
            visits = orders * each / (1 - unlimited) ** (sum(counts) + 1)
            yield _Combination(iterations, visits)


def _visits_of(limit: VisitLimit, iterations: Sequence[int]) -> int:
    return sum(iterations[loop] for loop in limit.loops)


def _mean_iterations(
    chances: Sequence[Fraction],
    most: dict[int, int],
    unlimited: Fraction,
    combinations: Sequence[_Combination],
) -> tuple[Fraction, ...]:
    all_visits = sum((c.visits for c in combinations), ZERO)
    visits = sum(((sum(c.iterations) + 1) * c.visits for c in combinations), ZERO) / all_visits
    limited = {
        loop: sum((c.iterations[loop] * c.visits for c in combinations), ZERO) / all_visits
        for loop in most
    }
    return tuple(
        limited.get(loop, visits * chance / (1 - unlimited)) for loop, chance in enumerate(chances)
    )


def _spent_shares(
    chances: Sequence[Fraction],
    limits: Sequence[VisitLimit],
    combinations: Sequence[_Combination],
) -> dict[str, Fraction]:
    """Add up, over all visits, the chance that the next loop is one too many."""
    shares: dict[str, Fraction] = dict.fromkeys((limit.step for limit in limits), ZERO)
    for iterations, visits in combinations:
        for loop, chance in enumerate(chances):
            full = [
                limit
                for limit in limits
                if loop in limit.loops and _visits_of(limit, iterations) == limit.left
            ]
            if full:
                shares[full[0].step] += visits * chance
    return shares
