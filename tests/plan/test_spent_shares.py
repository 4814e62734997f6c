"""How often a step is spent, by the chances and by the weights."""

from fractions import Fraction

from builder.plan.spent_shares import SpentShares, spent_shares

TREE = """
a:
  check: First look
  results:
    - {{result: fine, branch: b}}
    - {{result: not sure, branch: clean, chance: 0.5}}
b:
  check: Second look
  results:
    - {{result: fine, branch: mend}}
    - {{result: not sure, branch: clean, chance: {chance}}}
clean:
  action: Clean it
  at_most: 1
  spent: give-up
  then: a
mend:
  fix: Mend it
  cause: Dirt
  weight: 3
give-up:
  stop: Ask the foreman
  kind: foreman
  weight: {weight}
"""


def test_chances_and_weights_tell_how_often_a_step_is_spent(tree) -> None:
    """A quarter of the walks take a way back of chance 1/2 twice; the weights say the same."""
    (found,) = spent_shares(tree(TREE.format(chance=0, weight=1)))
    assert found == SpentShares("clean", Fraction(1, 4), Fraction(1, 4))


def test_the_shares_of_several_loops_are_added_up(tree) -> None:
    """A quarter at the first look; at the second, where 7 of 8 come by, a quarter of a quarter.

    Half of the walk in four that is given up goes to the cleaning from either look: so 7 of 8.
    """
    (found,) = spent_shares(tree(TREE.format(chance=0.25, weight=1)))
    assert found.by_chances == Fraction(1, 4) + Fraction(7, 8) * Fraction(1, 16)
    assert found.by_weights == Fraction(1, 4)


def test_a_step_that_only_the_chances_speak_of_is_left_out(tree) -> None:
    """Without a weight of the end beyond `spent` there is nothing to hold the chances against."""
    assert list(spent_shares(tree(TREE.format(chance=0, weight=0)))) == []
