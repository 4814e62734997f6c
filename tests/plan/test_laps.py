"""Ways back as laps: where they lead, and how often they are gone round."""

from fractions import Fraction

from builder.plan.course import course
from builder.plan.laps import Lap, laps

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
    """From the second look over cleaning and resting to the first look again.

    Of the walks that are mended 4/7 go round never, 2/7 once and 1/7 twice; one walk in eight
    comes to the cleaning a third time.
    """
    drawn = tree(TREE)
    found = laps(drawn, course(drawn))
    assert found.by_chance == {"b": (Lap("b", ("clean", "rest"), "a", Fraction(4, 7)),)}
    assert found.used_up == {"b": {"clean": Fraction(1, 8)}}
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
    assert found["a"] == (Lap("a", ("park",), "a", Fraction(1, 3)),)
    assert found["b"] == (Lap("b", ("park",), "b", Fraction(4, 7)),)
