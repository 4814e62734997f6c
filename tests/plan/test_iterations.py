"""How often loops are taken: the docstring's definition, with every walk tried one by one."""

from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.iterations import VisitLimit, expected_iterations

CHANCES = st.fractions(0, Fraction(9, 20), max_denominator=20)
ONLY = frozenset({0})


def walks(
    chances: list[Fraction], limits: list[VisitLimit], done: tuple[int, ...]
) -> Iterator[tuple[Fraction, tuple[int, ...], str]]:
    """Yield the share, the iterations and the spent step of every walk, one visit at a time."""
    yield 1 - sum(chances), done, ""
    for loop, chance in enumerate(chances):
        after = tuple(count + (at == loop) for at, count in enumerate(done))
        full = [
            limit
            for limit in limits
            if loop in limit.loops and sum(after[at] for at in limit.loops) > limit.left
        ]
        if full:
            yield chance, done, full[0].step
        else:
            yield from ((chance * share, *rest) for share, *rest in walks(chances, limits, after))


@given(
    chances=st.lists(CHANCES, min_size=1, max_size=2), most=st.lists(st.integers(0, 3), min_size=3)
)
def test_iterations_are_those_of_all_walks_one_by_one(
    chances: list[Fraction], most: list[int]
) -> None:
    """A limit on each loop and one on all of them: try every walk."""
    loops = range(len(chances))
    limits = [VisitLimit(f"loop {loop}", most[loop], frozenset({loop})) for loop in loops]
    limits.append(VisitLimit("all", most[2], frozenset(loops)))
    all_walks = list(walks(chances, limits, (0,) * len(chances)))
    assert sum(share for share, _, _ in all_walks) == 1
    going_on = [(share, done) for share, done, spent_step in all_walks if not spent_step]
    iterations = expected_iterations(chances, limits)
    for loop in loops:
        average = sum(share * done[loop] for share, done in going_on) / sum(
            share for share, _ in going_on
        )
        assert iterations.mean[loop] == average
    for limit in limits:
        share_spent = sum(share for share, _, spent_step in all_walks if spent_step == limit.step)
        assert iterations.spent[limit.step] == share_spent


@given(chance=CHANCES, left=st.integers(0, 12))
def test_one_loop_is_spent_by_a_power_of_its_chance(chance: Fraction, left: int) -> None:
    """Chance c and n iterations allowed: c to the power of n + 1 of the walks take one too many."""
    assert expected_iterations([chance], [VisitLimit("step", left, ONLY)]).spent == {
        "step": chance ** (left + 1)
    }


def test_without_a_limit_the_series_goes_on() -> None:
    """Reference: the mean of the geometric distribution, c / (1 - c); from memory."""
    assert expected_iterations([Fraction(1, 4)]).mean == (Fraction(1, 3),)
    limited = expected_iterations([Fraction(1, 4)], [VisitLimit("step", 60, ONLY)])
    assert limited.mean[0] == pytest.approx(1 / 3)


def test_loops_of_one_step_share_its_visits() -> None:
    """Chances of 1/4 and 1/2: a quarter goes on, so 1 and 2 iterations for each walk that does."""
    assert expected_iterations([Fraction(1, 4), Fraction(1, 2)]).mean == (1, 2)


def test_a_loop_with_a_limit_beside_one_without() -> None:
    """The unlimited loop may come before and after the limited one.

    With 1/4 unlimited and 1/2 once at most: 4/3 visits before the limited loop and, for 2/3 of the
    walks times 4/3, as many after it. Two walks in five have done the limited loop.
    """
    iterations = expected_iterations(
        [Fraction(1, 4), Fraction(1, 2)], [VisitLimit("step", 1, frozenset({1}))]
    )
    assert iterations.mean[1] == Fraction(2, 5)
    assert iterations.mean[0] == (1 + Fraction(2, 5)) * Fraction(1, 3)


def test_of_two_limits_on_one_loop_the_smaller_counts() -> None:
    """Beside a limit that is far too large to try out, one round is still one round."""
    limits = [VisitLimit("a", 10**9, ONLY), VisitLimit("b", 1, ONLY)]
    iterations = expected_iterations([Fraction(1, 2)], limits)
    assert iterations.mean == (Fraction(1, 3),)
    assert iterations.spent == {"a": 0, "b": Fraction(1, 4)}


@pytest.mark.parametrize(("left", "spent"), [(99, {"step": Fraction(1, 2**100)}), (100, {})])
def test_a_hundred_counts_are_tried_and_no_more(left: int, spent: dict[str, Fraction]) -> None:
    """Beyond that a limit is hardly ever reached, and trying it out would take long."""
    assert expected_iterations([Fraction(1, 2)], [VisitLimit("step", left, ONLY)]).spent == spent


def test_impossible_input_does_not_fail() -> None:
    """Always back without a limit, more than every visit, limits too large to try out."""
    assert expected_iterations([Fraction(1)]).mean == (0,)
    assert expected_iterations([Fraction(1)], [VisitLimit("step", 2, ONLY)]).spent == {"step": 1}
    assert expected_iterations([Fraction(1), Fraction(1)]).mean == (0, 0)
    assert expected_iterations([Fraction(1, 2)], [VisitLimit("step", 10**9, ONLY)]).mean == (1,)
    assert expected_iterations([]).mean == ()
