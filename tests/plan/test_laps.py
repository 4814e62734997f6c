"""Ways back as laps: where they lead, and how often they are gone round."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builder.plan.course import course
from builder.plan.laps import Lap, laps, rounds, together

TREE = """
a:
  check: First look
  results:
    - {result: seen, branch: b}
b:
  check: Second look
  results:
    - {result: fine, branch: mend}
    - {result: not sure, branch: clean, chance: 0.5}
clean:
  action: Clean it
  at_most: 2
  spent: give-up
  then: rest
rest:
  action: Let it rest
  then: a
mend:
  fix: Mend it
  cause: Dirt
give-up:
  stop: Ask the foreman
  kind: foreman
"""


def test_a_lap_goes_back_over_the_steps_between(tree) -> None:
    """From the second look over cleaning and resting to the first look again."""
    drawn = tree(TREE)
    found = laps(drawn, course(drawn))
    assert found.by_chance == {"b": (Lap("b", ("clean", "rest"), "a", Fraction(3, 4)),)}
    assert found.spent == {"clean": Lap("clean", ("rest",), "a", Fraction(2))}


def test_an_action_that_goes_back_returns_to_its_caller_alone(tree) -> None:
    """Two checks share the action; the lap of each comes back to itself."""
    drawn = tree("""
a:
  check: First try
  at_most: 2
  results:
    - {result: done, branch: b}
    - {result: refused, branch: park, chance: 0.5}
b:
  check: Second try
  at_most: 3
  results:
    - {result: done, branch: well}
    - {result: refused, branch: park, chance: 0.5}
park:
  action: Park it
  then: back
well:
  stop: All is well
  kind: not-found
""")
    found = laps(drawn, course(drawn)).by_chance
    assert found["a"] == (Lap("a", ("park",), "a", Fraction(1, 2)),)
    assert found["b"] == (Lap("b", ("park",), "b", Fraction(1, 2) + Fraction(1, 4)),)


@given(chance=st.fractions(0, Fraction(9, 10), max_denominator=20), most=st.integers(0, 12))
def test_rounds_are_the_sum_of_the_powers(chance: Fraction, most: int) -> None:
    """Reference: the sum written out, term by term."""
    assert rounds(chance, most) == sum((chance**n for n in range(1, most + 1)), Fraction(0))


def test_without_a_bound_the_series_goes_on() -> None:
    """Reference: the sum of the geometric series, c / (1 - c); from memory."""
    assert rounds(Fraction(1, 4), None) == Fraction(1, 3)
    assert rounds(Fraction(1, 4), 60) == pytest.approx(1 / 3)


def test_a_lap_that_is_always_taken_ends_with_its_bound() -> None:
    """Three turns allowed beside the first, three turns taken; none allowed, none counted."""
    assert rounds(Fraction(1), 3) == 3
    assert rounds(Fraction(1), None) == 0


def test_laps_of_one_step_share_its_arrivals() -> None:
    """Chances of 1/4 and 1/2: a quarter goes on, so 1 and 2 turns for each walk that does."""
    assert together([rounds(Fraction(1, 4), None), rounds(Fraction(1, 2), None)]) == [
        Fraction(1),
        Fraction(2),
    ]
    assert together([rounds(Fraction(1, 4), None)]) == [Fraction(1, 3)]
