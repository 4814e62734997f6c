"""The numbers that page, walk, chart and bench sheet share."""

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.routes import ExitKind
from builder.model.tree import Tree
from builder.plan.numbering import chart_lines, numbering, tree_outline
from builder.plan.outline import reading_order

MakeTree = Callable[[str], Tree]
LADDER = """
first:
  check: Is it plugged in
  results:
    - {result: no, branch: plug}
    - {result: yes, branch: second}
second:
  check: Is the fuse good
  results:
    - {result: good, branch: third}
    - {result: blown, branch: fuse}
third:
  check: Is the wire whole
  at_most: 2
  spent: ask
  results:
    - {result: whole, branch: module}
    - {result: broken, branch: wire}
plug: {fix: Plug it in, cause: Unplugged, weight: 1, still_there: second}
fuse: {fix: Replace the fuse, cause: Blown, weight: 2}
wire: {fix: Repair the wire, cause: Broken, weight: 3}
module: {fix: Replace the module, cause: Dead, weight: 1}
ask: {stop: Ask the foreman, kind: foreman}
"""


def test_numbers_follow_the_usual_path_with_the_results_first(tree: MakeTree) -> None:
    """A branch that ends at once is numbered before the next check; the heaviest end is last."""
    numbers = numbering(tree(LADDER))
    assert list(numbers) == ["first", "plug", "second", "fuse", "third", "module", "ask", "wire"]
    assert list(numbers.values()) == list(range(1, 9))


def test_an_exit_is_drawn_only_where_nothing_else_leads(tree: MakeTree) -> None:
    """The exit after the last try is a line to `ask`; a failed verification stays in the box."""
    drawn = chart_lines(tree(LADDER))
    assert [line.exit.kind for line in drawn["third"]] == [
        ExitKind.RESULT,
        ExitKind.RESULT,
        ExitKind.SPENT,
    ]
    assert drawn["plug"] == ()


def test_a_handoff_is_drawn_beside_each_check_that_leads_to_it(tree: MakeTree) -> None:
    """It is no step of this tree and has no number; nobody has to look for it."""
    made = tree("""
first:
  check: Is it plugged in
  results:
    - {result: no, branch: other/tree}
    - {result: yes, branch: second}
second:
  check: Is the fuse good
  results:
    - {result: blown, branch: other/tree}
    - {result: good, branch: module}
module: {fix: Replace the module, cause: Dead, weight: 1}
""")
    (section,) = tree_outline(made, chart_lines(made))
    beside = [
        [link.step for side in block.sides for link in side.chain] for block in section.blocks
    ]
    assert beside == [["handoff:other/tree"], ["handoff:other/tree"], []]
    assert numbering(made) == {"first": 1, "second": 2, "module": 3}


def test_unreachable_steps_are_numbered_last(tree: MakeTree) -> None:
    """A half-written tree still has a number for every step."""
    numbers = numbering(tree(LADDER + "lost: {stop: Nobody comes here, kind: foreman}\n"))
    assert numbers["lost"] == 9


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_numbers_are_one_to_the_count_of_steps(acyclic: st.SearchStrategy[Tree], data) -> None:
    """No number is skipped or used twice."""
    tree = data.draw(acyclic)
    numbers = numbering(tree)
    assert sorted(numbers.values()) == list(range(1, len(tree.steps) + 1))
    assert numbers[tree.start.id] == 1


@pytest.mark.parametrize(("limit", "places"), [("", 2), (", at_most: 1, spent: ask", 1)])
def test_a_short_action_that_goes_back_is_drawn_at_each_check(
    tree: MakeTree, limit: str, places: int
) -> None:
    """One that can be spent leads on and has one place."""
    made = tree(f"""
first: {{check: Does it move?, results: {{no: park, yes: second}}}}
second: {{check: Does it stop?, results: {{no: park, yes: module}}}}
park: {{action: Park it, then: back{limit}}}
module: {{fix: Replace the module, cause: Dead, weight: 1}}
ask: {{stop: Ask the foreman}}
""")
    sections = tree_outline(made, chart_lines(made))
    assert list(reading_order(sections)).count("park") == places


def test_results_in_order_run_on_at_the_last_of_them(tree: MakeTree) -> None:
    """A heavier one before it stays beside, and so does what to do without a reading."""
    made = tree("""
volts:
  check: Measure the battery
  several: first fits
  results:
    - {result: low, branch: charge}
    - {result: good, branch: look}
  cannot_test: ask
charge: {check: Does it charge?, results: {yes: battery, no: ask}}
look: {check: Is the cable good?, results: {yes: ask, no: cable}}
battery: {fix: Replace the battery, cause: Dead, weight: 9}
cable: {fix: Replace the cable, cause: Broken, weight: 1}
ask: {stop: Ask the foreman}
""")
    first = tree_outline(made, chart_lines(made))[0]
    assert [block.step for block in first.blocks] == ["volts", "look", "cable"]
