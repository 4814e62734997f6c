"""Shortest and longest minutes: every walk that `at_most` allows, unless there are too many."""

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest

from builder.model.tree import Tree
from builder.plan import minutes_range as module
from builder.plan.forward_graph import forward_graph
from builder.plan.minutes_range import minutes_range
from builder.reader.procedure_files import procedure_from
from builder.reader.source import Source

CASES = Path(__file__).parent / "cases"
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
  spent: repair
  results:
    - {result: one, branch: c}
    - {result: two, branch: a}
c:
  check: Third
  minutes: 7
  results:
    - {result: one, branch: a}
    - {result: two, branch: b}
    - {result: three, branch: repair}
repair:
  fix: Repair it
  cause: It was so
  minutes: 1
tired:
  stop: Ask the foreman
  kind: foreman
  minutes: 2
"""


def lengths(tree: Tree, step: str, done: dict[str, int]) -> Iterator[Fraction]:
    """Yield the minutes of every walk from a step. Reference: plain recursion, walk by walk."""
    current = tree.steps[step]
    if current.at_most and done.get(step, 0) >= current.at_most:
        yield from lengths(tree, current.spent.step, done)
        return
    own = Fraction(current.minutes)
    if current.kind in ("fix", "stop"):
        yield own
        return
    for result in current.body.results:
        again = done | {step: done.get(step, 0) + 1}
        yield from (own + rest for rest in lengths(tree, result.branch.step, again))


@pytest.mark.parametrize("start", ["a", "b", "c"])
def test_the_range_is_that_of_all_walks_one_by_one(tree, start: str) -> None:
    """Three steps that lead to each other, two of them limited: try every walk."""
    drawn = tree(LOOPS)
    bounds = minutes_range(drawn, forward_graph(drawn))
    walks = list(lengths(drawn, start, {}))
    assert len(walks) > 10
    assert (bounds.shortest[start], bounds.longest[start]) == (min(walks), max(walks))


@pytest.mark.parametrize("bound", ["MAX_STATES", "MAX_COUNTS"])
def test_with_too_many_repeats_every_step_counts_once(tree, monkeypatch, bound: str) -> None:
    """There is still a figure, and it states that the repeats are not in it."""
    monkeypatch.setattr(module, bound, 3)
    drawn = tree(LOOPS)
    bounds = minutes_range(drawn, forward_graph(drawn))
    assert not bounds.includes_repeats
    assert bounds.longest["a"] == 3 + 5 + 7 + 1
    assert bounds.shortest["a"] == 2 + 3


def test_a_loop_without_a_limit_counts_one_iteration(tree) -> None:
    """The check refuses it; a draft still gets its figures."""
    drawn = tree("""
a:
  check: Look
  minutes: 3
  results:
    - {result: low, branch: charge}
    - {result: good, branch: repair}
charge:
  action: Charge it
  minutes: 10
  then: a
repair:
  fix: Repair it
  cause: It was so
  minutes: 1
""")
    bounds = minutes_range(drawn, forward_graph(drawn))
    assert (bounds.shortest["a"], bounds.longest["a"]) == (4, 13)


def test_an_action_that_goes_back_has_the_range_of_all_that_lead_to_it(tree) -> None:
    """From it back to the second check it is 3 + 8 at least; to the first, 3 + 13 + 10 + 33."""
    drawn = tree((CASES / "shared-action-that-goes-back.yml").read_text("utf-8"))
    bounds = minutes_range(drawn, forward_graph(drawn))
    assert (bounds.shortest["park"], bounds.longest["park"]) == (3 + 8, 3 + 13 + 10 + 33)


def test_the_range_of_a_word_is_that_of_the_walks_that_return_it() -> None:
    """Whether a result returns it or a step; where none does, a step has no range."""
    text = """\
title: Is the feed good?
returns: [good, bad]
steps:
  feed:
    check: Does the bulb glow?
    minutes: 3
    results:
      - {result: bright, return: good}
      - {result: dim, branch: look}
      - {result: dark, branch: dark}
  look:
    check: Is the connector clean?
    minutes: 5
    results:
      - {result: yes, return: good}
      - {result: no, branch: dark}
  dark: {return: bad}
"""
    procedure, findings = procedure_from(Source("kb/procedures/feed.yml", text, ""))
    assert procedure
    assert not findings
    graph = forward_graph(procedure.tree)
    good, bad = (minutes_range(procedure.tree, graph, word) for word in ("good", "bad"))
    assert (good.shortest, good.longest) == ({"feed": 3, "look": 5}, {"feed": 8, "look": 5})
    assert bad.shortest == {"feed": 3, "look": 5, "dark": 0}
    assert bad.longest == {"feed": 8, "look": 5, "dark": 0}


@pytest.mark.parametrize(("no", "shortest"), [("ask", 3 + 1), ("repair", 3)])
def test_what_cannot_be_tested_is_walked_only_if_nothing_else_leads_there(
    tree, no: str, shortest: int
) -> None:
    """The shortest walk is not the one in which a check is skipped."""
    drawn = tree(f"""
a: {{check: Look, minutes: 3, cannot_test: ask, results: {{yes: repair, no: b}}}}
b: {{check: Look again, minutes: 5, results: {{yes: repair, no: {no}}}}}
repair: {{fix: Repair it, cause: It was so, minutes: 1}}
ask: {{stop: Ask the foreman}}
""")
    assert minutes_range(drawn, forward_graph(drawn)).shortest["a"] == shortest
