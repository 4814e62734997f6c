"""Fewest and most minutes: every walk that `at_most` allows, and what if there are too many."""

from collections.abc import Iterator
from fractions import Fraction

import pytest

from builder.model.tree import Tree
from builder.plan import extremes as module
from builder.plan.course import course
from builder.plan.extremes import extremes

LOOPS = """
a:
  check: First
  minutes: 3
  at_most: 3
  spent: tired
  results:
    - {result: one, branch: b}
    - {result: two, branch: c}
b:
  check: Second
  minutes: 5
  at_most: 2
  spent: mend
  results:
    - {result: one, branch: c}
    - {result: two, branch: a}
c:
  check: Third
  minutes: 7
  results:
    - {result: one, branch: a}
    - {result: two, branch: b}
    - {result: three, branch: mend}
mend:
  fix: Mend it
  cause: It was so
  minutes: 1
tired:
  stop: Ask the foreman
  kind: foreman
  minutes: 2
"""


def lengths(tree: Tree, step: str, done: dict[str, int]) -> Iterator[Fraction]:
    """Yield the minutes of every walk from a step. Reference: plain recursion, walk by walk."""
    asked = tree.steps[step]
    if asked.at_most and done.get(step, 0) >= asked.at_most:
        yield from lengths(tree, asked.spent.step, done)
        return
    own = Fraction(asked.minutes)
    if asked.kind in ("fix", "stop"):
        yield own
        return
    for result in asked.body.results:
        again = done | {step: done.get(step, 0) + 1}
        yield from (own + rest for rest in lengths(tree, result.branch.step, again))


@pytest.mark.parametrize("start", ["a", "b", "c"])
def test_the_bounds_are_those_of_all_walks_one_by_one(tree, start: str) -> None:
    """Three steps that lead to each other, two of them bounded: every walk tried."""
    drawn = tree(LOOPS)
    cost = {step.id: Fraction(step.minutes) for step in drawn.steps.values()}
    found = extremes(drawn, course(drawn), cost)
    every = list(lengths(drawn, start, {}))
    assert len(every) > 10
    assert (found.shortest[start], found.longest[start]) == (min(every), max(every))


def test_too_many_ways_to_repeat_count_every_step_once(tree, monkeypatch) -> None:
    """A figure is still given, and says that the repeats are not in it."""
    monkeypatch.setattr(module, "MOST_STATES", 3)
    drawn = tree(LOOPS)
    cost = {step.id: Fraction(step.minutes) for step in drawn.steps.values()}
    found = extremes(drawn, course(drawn), cost)
    assert not found.repeats
    assert found.longest["a"] == 3 + 5 + 7 + 1
    assert found.shortest["a"] == 2 + 3


def test_a_way_back_without_a_bound_counts_one_round(tree) -> None:
    """The check refuses it; a draft still gets its figures."""
    drawn = tree("""
a:
  check: Look
  minutes: 3
  results:
    - {result: low, branch: charge}
    - {result: good, branch: mend}
charge:
  action: Charge it
  minutes: 10
  then: a
mend:
  fix: Mend it
  cause: It was so
  minutes: 1
""")
    cost = {step.id: Fraction(step.minutes) for step in drawn.steps.values()}
    found = extremes(drawn, course(drawn), cost)
    assert (found.shortest["a"], found.longest["a"]) == (4, 13)
