"""Retry loops: where they lead back to, and how often they are taken."""

from dataclasses import replace
from fractions import Fraction

import pytest

from builder.plan.forward_graph import forward_graph
from builder.plan.retry_loops import RetryLoop, find_retry_loops

TREE = """
a:
  check: First look
  results:
    - {result: seen, branch: b}
b:
  check: Second look
  results:
    - {result: fine, branch: repair}
    - {result: not sure, branch: clean, chance: 0.5}
clean:
  action: Clean it
  at_most: 2
  spent: give-up
  then: rest
rest:
  action: Let it rest
  then: a
repair:
  fix: Repair it
  cause: Dirt
give-up:
  stop: Ask the foreman
  kind: foreman
"""


def test_a_loop_goes_back_over_the_steps_between(tree) -> None:
    """From the second look over cleaning and resting to the first look again.

    Of the walks that end with the repair, 4/7 never go around, 2/7 once and 1/7 twice; one walk in
    eight comes to the cleaning a third time.
    """
    drawn = tree(TREE)
    loops = find_retry_loops(drawn, forward_graph(drawn))
    back = (("b", 1), ("clean", 0), ("rest", 0))
    assert loops.by_chance == {"b": (RetryLoop("b", back, "a", Fraction(4, 7)),)}
    assert loops.by_chance["b"][0].between == ("clean", "rest")
    assert loops.spent_shares == {"b": {"clean": Fraction(1, 8)}}
    assert loops.by_spent == {"clean": RetryLoop("clean", back[1:], "a", Fraction(2))}


def test_an_action_that_goes_back_returns_to_its_caller_only(tree) -> None:
    """Two checks share the action; the loop of each comes back to itself."""
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
    loops = find_retry_loops(drawn, forward_graph(drawn)).by_chance
    assert loops["a"] == (RetryLoop("a", (("a", 1), ("park", 0)), "a", Fraction(1, 3)),)
    assert loops["b"] == (RetryLoop("b", (("b", 1), ("park", 0)), "b", Fraction(4, 7)),)


@pytest.mark.parametrize("broken", [{"clean"}, {"rest"}, {"b"}, {"clean", "rest", "b"}])
def test_no_loop_goes_on_from_a_step_with_a_text_error(tree, broken: set[str]) -> None:
    """Where such a step leads is not known; the loops of the others are still counted."""
    drawn = replace(tree(TREE), broken=frozenset(broken))
    loops = find_retry_loops(drawn, forward_graph(drawn))
    every = [*(loop for some in loops.by_chance.values() for loop in some),
             *loops.by_spent.values()]  # fmt: skip
    assert not any(step in broken for loop in every for step, _ in loop.back)


LIMITED = """
first: {{check: First look, at_most: 1, results: {{seen: z}}}}
z: {{check: Second look, at_most: {z}, results: {{seen: a}}}}
a: {{check: Third look, at_most: {a}, results: {{seen: look}}}}
look:
  check: Does it work?
  results:
    - {{result: yes, branch: well}}
    - {{result: no, branch: clean, chance: 0.5}}
clean: {{action: Clean it, then: rest}}
rest: {{action: Let it rest, at_most: {rest}, then: z}}
well: {{stop: All is well}}
"""


@pytest.mark.parametrize(
    ("z", "a", "rest", "spent"),
    [(2, 2, 9, "z"), (3, 2, 9, "a"), (2, 2, 1, "rest"), (3, 3, 1, "rest")],
)
def test_the_limit_that_a_loop_meets_first_is_spent(tree, z: int, a: int, rest: int, spent) -> None:
    """A quarter of the walks goes around twice; a step before the loop limits nothing."""
    drawn = tree(LIMITED.format(z=z, a=a, rest=rest))
    (shares,) = find_retry_loops(drawn, forward_graph(drawn)).spent_shares.values()
    assert {step: share for step, share in shares.items() if share} == {spent: Fraction(1, 4)}
