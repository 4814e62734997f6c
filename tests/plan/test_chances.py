"""How often a walk ends where: the rules of sharing, and what must hold always."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.tree import Tree
from builder.plan.chances import chances

FIX = """
{name}:
  fix: Mend {name}
  cause: It was {name}
"""


def ends(*names: str, **weights: float) -> str:
    """Write fixes, with weights where they are given."""
    weighted = (FIX.format(name=n) + f"  weight: {w}\n" for n, w in weights.items())
    return "".join(map(FIX.format_map, ({"name": n} for n in names))) + "".join(weighted)


def check(name: str, *results: str) -> str:
    """Write a check; a result is the target and the words that follow it."""
    lines = [f"{name}:", f"  check: Look at {name}", "  results:"]
    for number, result in enumerate(results):
        target, *more = result.split(" ", 1)
        lines.append(f"    - {{result: seen {number}, branch: {', '.join([target, *more])}}}")
    return "\n".join(lines) + "\n"


def test_a_fix_ends_as_many_walks_as_its_weight_says(tree) -> None:
    """Weights 3 and 5: three walks in eight end at the first, whatever stands between."""
    found = chances(tree(check("a", "belt", "b") + check("b", "belt", "diode") +
                         ends(belt=3, diode=5)))  # fmt: skip
    assert found.ends == {"belt": Fraction(3, 8), "diode": Fraction(5, 8)}


def test_a_weight_is_split_evenly_over_the_ways_to_its_fix(tree) -> None:
    """Half of the belts are found at once, half at the second look."""
    found = chances(tree(check("a", "belt", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert found.routes["a", 0] == Fraction(2, 10)
    assert found.routes["b", 0] == Fraction(2, 10)
    assert found.steps["b"] == Fraction(8, 10)


def test_a_result_may_say_otherwise(tree) -> None:
    """A way that states 1 of a weight of 4 leaves 3 to the other."""
    found = chances(tree(check("a", "belt weight: 1", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert found.routes["a", 0] == Fraction(1, 10)
    assert found.routes["b", 0] == Fraction(3, 10)


def test_stated_weights_that_do_not_add_up_count_in_proportion(tree) -> None:
    """Ways that state 10 and 30 share a weight of 4 as 1 and 3: the fix knows how often it is."""
    found = chances(tree(check("a", "belt weight: 10", "b") + check("b", "belt weight: 30", "diode")
                         + ends(belt=4, diode=6)))  # fmt: skip
    assert found.routes["a", 0] == Fraction(1, 10)
    assert found.routes["b", 0] == Fraction(3, 10)


def test_a_way_that_states_more_than_there_is_leaves_nothing_to_the_others(tree) -> None:
    """No way can get less than nothing."""
    found = chances(tree(check("a", "belt weight: 9", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert found.routes["a", 0] == Fraction(4, 10)
    assert found.routes["b", 0] == 0


def test_a_fix_without_a_weight_takes_those_of_the_ways_to_it(tree) -> None:
    """Two ways that state 1 and 2 make a fix of weight 3."""
    found = chances(tree(check("a", "belt weight: 1", "b") + check("b", "belt weight: 2", "diode") +
                         ends("belt", diode=6)))  # fmt: skip
    assert found.ends == {"belt": Fraction(3, 9), "diode": Fraction(6, 9)}


def test_a_fix_without_any_weight_counts_as_the_average_one(tree) -> None:
    """Beside weights of 2 and 4 it counts 3."""
    found = chances(tree(check("a", "x", "y", "z") + ends("x", y=2, z=4)))
    assert found.ends["x"] == Fraction(3, 9)


def test_without_any_weight_every_fix_ends_as_many_walks(tree) -> None:
    """Nobody has said what is usual, so nothing is."""
    found = chances(tree(check("a", "x", "b") + check("b", "y", "z") + ends("x", "y", "z")))
    assert set(found.ends.values()) == {Fraction(1, 3)}


STOPS = """
gone:
  stop: Not here today
  kind: not-found
"""


def test_a_stop_counts_nothing_until_it_says_so(tree) -> None:
    """A stop is no cause, but it takes time when it has a weight."""
    text = check("a", "x", "gone") + ends(x=3) + STOPS
    assert chances(tree(text)).ends == {"x": Fraction(1), "gone": Fraction(0)}
    assert chances(tree(text + "  weight: 1\n")).ends == {
        "x": Fraction(3, 4),
        "gone": Fraction(1, 4),
    }


def test_where_all_weights_are_nothing_every_fix_counts_as_much(tree) -> None:
    """A walk still ends somewhere: at the fixes alone, not at a stop."""
    found = chances(tree(check("a", "x", "y", "gone") + ends(x=0, y=0) + STOPS))
    assert found.ends == {"x": Fraction(1, 2), "y": Fraction(1, 2), "gone": Fraction(0)}


def test_a_tree_that_mends_nothing_counts_every_end(tree) -> None:
    """A tree that only sorts cases has as many ways as it has ends."""
    found = chances(tree(check("a", "gone", "other/tree", "other/one") + STOPS))
    assert found.ends["gone"] == found.routes["a", 1] == found.routes["a", 2] == Fraction(1, 3)


def test_a_handoff_takes_the_weight_of_its_result(tree) -> None:
    """One of four walks goes on in another tree."""
    found = chances(tree(check("a", "x", "other/tree weight: 1") + ends(x=3)))
    assert found.routes["a", 1] == Fraction(1, 4)
    assert found.ends["x"] == Fraction(3, 4)


def test_a_way_to_an_action_that_hands_over_may_carry_the_weight(tree) -> None:
    """The weight stands on the result; the action between has no place for it."""
    found = chances(
        tree(
            check("a", "x", "tow weight: 1")
            + ends(x=3)
            + """
tow:
  action: Bring it in
  then: other/tree
"""
        )
    )
    assert found.routes["tow", 0] == Fraction(1, 4)


def test_a_way_back_leads_to_no_end_of_its_own(tree) -> None:
    """Charging the battery and measuring again finds nothing that was not there."""
    found = chances(
        tree(
            check("a", "x", "charge chance: 0.2", "y")
            + ends(x=1, y=3)
            + """
charge:
  action: Charge it
  at_most: 2
  then: back
"""
        )
    )
    assert found.steps["charge"] == 0
    assert found.ends == {"x": Fraction(1, 4), "y": Fraction(3, 4)}


def test_what_could_not_be_done_counts_only_where_nothing_else_leads_there(tree) -> None:
    """`could_not` is how a step is left when something is in the way, not the usual way."""
    asked = check("a", "x", "y") + "  could_not: "
    assert chances(tree(asked + "x\n" + ends(x=1, y=1))).routes["a", 2] == 0
    assert chances(tree(asked + "z\n" + ends(x=1, y=1, z=2))).routes["a", 2] == Fraction(1, 2)


def test_a_fix_that_is_only_found_after_another_failed_is_found_through_it(tree) -> None:
    """Five of eight belts that were changed had an alternator behind them."""
    found = chances(
        tree("""
a:
  check: Belt sound
  results:
    - {result: no, branch: belt}
belt:
  fix: Replace the belt
  cause: It slips
  weight: 3
  still_there: b
""" + check("b", "alternator") + ends(alternator=5)))  # fmt: skip
    assert found.steps["belt"] == 1
    assert found.ends == {"belt": Fraction(3, 8), "alternator": Fraction(5, 8)}


def test_steps_that_no_walk_comes_by_have_no_chance(tree) -> None:
    """A step that nothing leads to is a finding of the check, and no reason to fail here."""
    found = chances(tree(check("a", "x") + check("lost", "y") + ends(x=1, y=1)))
    assert found.steps["lost"] == 0
    assert "y" not in found.ends


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_all_ends_together_are_every_walk(acyclic: st.SearchStrategy[Tree], data) -> None:
    """The chances of all ends add up to exactly 1, and each is its weight's share."""
    drawn = data.draw(acyclic)
    found = chances(drawn)
    assert sum(found.ends.values()) == 1
    weights = {step: Fraction(drawn.steps[step].body.weight) for step in found.ends}
    everything = sum(weights.values())
    assert found.ends == {step: weight / everything for step, weight in weights.items()}


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_as_many_walks_leave_a_step_as_come_to_it(acyclic: st.SearchStrategy[Tree], data) -> None:
    """No walk is lost between two steps, and none is made up."""
    drawn = data.draw(acyclic)
    found = chances(drawn)
    for step in drawn.steps.values():
        out = sum(share for (source, _), share in found.routes.items() if source == step.id)
        assert found.steps[step.id] == out + found.ends.get(step.id, 0)
