"""How often ways back are taken: against the words of the docstring, tried out one by one."""

from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.rounds import Bound, rounds

CHANCES = st.fractions(0, Fraction(9, 20), max_denominator=20)
ONLY = frozenset({0})


def walks(
    chances: list[Fraction], bounds: list[Bound], behind: tuple[int, ...]
) -> Iterator[tuple[Fraction, tuple[int, ...], str]]:
    """Yield the share, the rounds and the fate of every walk. Reference: one arrival at a time."""
    yield 1 - sum(chances), behind, ""
    for way, chance in enumerate(chances):
        after = tuple(count + (at == way) for at, count in enumerate(behind))
        full = [
            one for one in bounds if way in one.on and sum(after[at] for at in one.on) > one.left
        ]
        if full:
            yield chance, behind, full[0].step
        else:
            yield from ((chance * share, *rest) for share, *rest in walks(chances, bounds, after))


@given(
    chances=st.lists(CHANCES, min_size=1, max_size=2), most=st.lists(st.integers(0, 3), min_size=3)
)
def test_rounds_are_those_of_all_walks_one_by_one(chances: list[Fraction], most: list[int]) -> None:
    """A bound on each way and one on all together: every walk tried."""
    ways = range(len(chances))
    bounds = [Bound(f"way {way}", most[way], frozenset({way})) for way in ways]
    bounds.append(Bound("all", most[2], frozenset(ways)))
    every = list(walks(chances, bounds, (0,) * len(chances)))
    assert sum(share for share, _, _ in every) == 1
    on = [(share, behind) for share, behind, fate in every if not fate]
    found = rounds(chances, bounds)
    for way in ways:
        average = sum(share * behind[way] for share, behind in on) / sum(share for share, _ in on)
        assert found.rounds[way] == average
    for bound in bounds:
        used_up = sum(share for share, _, fate in every if fate == bound.step)
        assert found.used_up[bound.step] == used_up


@given(chance=CHANCES, left=st.integers(0, 12))
def test_one_way_back_is_used_up_by_a_power_of_its_chance(chance: Fraction, left: int) -> None:
    """A chance c and n rounds allowed: c to the power of n + 1 of the walks take one too many."""
    assert rounds([chance], [Bound("step", left, ONLY)]).used_up == {"step": chance ** (left + 1)}


def test_without_a_bound_the_series_goes_on() -> None:
    """Reference: the mean of the geometric distribution, c / (1 - c); from memory."""
    assert rounds([Fraction(1, 4)]).rounds == (Fraction(1, 3),)
    bounded = rounds([Fraction(1, 4)], [Bound("step", 60, ONLY)])
    assert bounded.rounds[0] == pytest.approx(1 / 3)


def test_ways_back_of_one_step_share_its_arrivals() -> None:
    """Chances of 1/4 and 1/2: a quarter goes on, so 1 and 2 rounds for each walk that does."""
    assert rounds([Fraction(1, 4), Fraction(1, 2)]).rounds == (1, 2)


def test_a_way_back_with_a_bound_beside_one_without() -> None:
    """Either way a walk that goes on is one of all that may; the free one comes in between.

    With 1/4 free, 1/2 once at most: 4/3 arrivals before the bounded way and, of 2/3 of the walks
    times 4/3, as many after it. Two walks in five have the bounded way behind them.
    """
    found = rounds([Fraction(1, 4), Fraction(1, 2)], [Bound("step", 1, frozenset({1}))])
    assert found.rounds[1] == Fraction(2, 5)
    assert found.rounds[0] == (1 + Fraction(2, 5)) * Fraction(1, 3)


def test_of_two_bounds_on_one_way_the_smaller_counts() -> None:
    """Beside a bound that is far too large to try out, one round is still one round."""
    bounds = [Bound("once", 1, ONLY), Bound("often", 10**9, ONLY)]
    assert rounds([Fraction(1, 2)], bounds).rounds == (Fraction(1, 3),)


def test_what_can_not_be_is_no_reason_to_fail() -> None:
    """Always back without a bound, more than every arrival, bounds too large to try out."""
    assert rounds([Fraction(1)]).rounds == (0,)
    assert rounds([Fraction(1)], [Bound("step", 2, ONLY)]).used_up == {"step": 1}
    assert rounds([Fraction(1), Fraction(1)]).rounds == (0, 0)
    assert rounds([Fraction(1, 2)], [Bound("step", 10**9, ONLY)]).rounds == (1,)
    assert rounds([]).rounds == ()
