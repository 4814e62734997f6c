"""How often a walk ends where: how weights are shared, and properties of every tree."""

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.model.tree import Outcome, ProcedureRun, Tree
from builder.plan.chances import walk_chances
from builder.reader.procedure_files import procedure_from
from builder.reader.source import Source, decode

FIX = """
{name}:
  fix: Repair {name}
  cause: It was {name}
"""


def ends(*names: str, **weights: float) -> str:
    """Write fixes, some with weights."""
    weighted = (FIX.format(name=n) + f"  weight: {w}\n" for n, w in weights.items())
    return "".join(map(FIX.format_map, ({"name": n} for n in names))) + "".join(weighted)


def check(name: str, *results: str) -> str:
    """Write a check; a result is its target and the words after it."""
    lines = [f"{name}:", f"  check: Look at {name}", "  results:"]
    for number, result in enumerate(results):
        target, *more = result.split(" ", 1)
        lines.append(f"    - {{result: seen {number}, branch: {', '.join([target, *more])}}}")
    return "\n".join(lines) + "\n"


def test_a_fix_ends_as_many_walks_as_its_weight_says(tree) -> None:
    """Weights 3 and 5: three walks in eight end at the first, whatever stands between."""
    chances = walk_chances(tree(check("a", "belt", "b") + check("b", "belt", "diode") +
                         ends(belt=3, diode=5)))  # fmt: skip
    assert chances.ends == {"belt": Fraction(3, 8), "diode": Fraction(5, 8)}


def test_a_weight_is_split_evenly_over_the_edges_to_its_fix(tree) -> None:
    """Half of the belts fail the first check, half the second."""
    chances = walk_chances(tree(check("a", "belt", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert chances.routes["a", 0] == Fraction(2, 10)
    assert chances.routes["b", 0] == Fraction(2, 10)
    assert chances.steps["b"] == Fraction(8, 10)


def test_a_result_may_state_its_own_weight(tree) -> None:
    """An edge that states 1 of a weight of 4 leaves 3 to the other."""
    chances = walk_chances(tree(check("a", "belt weight: 1", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert chances.routes["a", 0] == Fraction(1, 10)
    assert chances.routes["b", 0] == Fraction(3, 10)


def test_stated_weights_that_do_not_add_up_count_in_proportion(tree) -> None:
    """Edges that state 10 and 30 share a weight of 4 as 1 and 3: the weight of the fix counts."""
    steps = check("a", "belt weight: 10", "b") + check("b", "belt weight: 30", "diode")
    chances = walk_chances(tree(steps + ends(belt=4, diode=6)))
    assert chances.routes["a", 0] == Fraction(1, 10)
    assert chances.routes["b", 0] == Fraction(3, 10)


def test_an_edge_that_states_too_much_leaves_nothing_to_the_others(tree) -> None:
    """No edge gets less than zero."""
    chances = walk_chances(tree(check("a", "belt weight: 9", "b") + check("b", "belt", "diode") +
                         ends(belt=4, diode=6)))  # fmt: skip
    assert chances.routes["a", 0] == Fraction(4, 10)
    assert chances.routes["b", 0] == 0


def test_a_fix_without_a_weight_takes_those_of_the_edges_to_it(tree) -> None:
    """Two edges that state 1 and 2 make a fix of weight 3."""
    steps = check("a", "belt weight: 1", "b") + check("b", "belt weight: 2", "diode")
    chances = walk_chances(tree(steps + ends("belt", diode=6)))
    assert chances.ends == {"belt": Fraction(3, 9), "diode": Fraction(6, 9)}


def test_weights_stand_on_the_edges_alone(tree) -> None:
    """Edges that state 1 and 3: no fix needs a weight of its own."""
    steps = check("a", "belt weight: 1", "b") + check("b", "diode weight: 3")
    chances = walk_chances(tree(steps + ends("belt", "diode")))
    assert chances.ends == {"belt": Fraction(1, 4), "diode": Fraction(3, 4)}


def test_where_no_fix_has_a_weight_one_without_counts_once(tree) -> None:
    """An edge that states 3 stands against 1 for the fix that nothing is known of."""
    steps = check("a", "belt weight: 3", "b") + check("b", "diode", "diode")
    chances = walk_chances(tree(steps + ends("belt", "diode")))
    assert chances.ends == {"belt": Fraction(3, 4), "diode": Fraction(1, 4)}


def test_an_edge_that_states_zero_carries_all_if_there_is_no_other(tree) -> None:
    """The weight of the fix counts: somebody has to come to it."""
    chances = walk_chances(tree(check("a", "belt weight: 0", "diode") + ends(belt=4, diode=6)))
    assert chances.routes["a", 0] == chances.ends["belt"] == Fraction(4, 10)
    text = check("a", "belt weight: 0", "belt weight: 0", "diode") + ends(belt=4, diode=6)
    chances = walk_chances(tree(text))
    assert chances.routes["a", 0] == chances.routes["a", 1] == Fraction(2, 10)


def test_a_procedure_leads_on_as_often_as_it_returns_its_words(tree) -> None:
    """Words with 3 and 1 in 10, to a fix that another check leads to as well: 3, 1 and 2 of 6.

    Where it is said to return none of them, they share evenly.
    """
    case = tree(check("a", "belt", "belt", "b") + check("b", "belt", "diode") +
                ends(belt=6, diode=4))  # fmt: skip
    words = {f"seen {word}": Outcome(chance=Fraction(tenths, 10))
             for word, tenths in enumerate((3, 1, 6))}  # fmt: skip
    never = {word: Outcome(chance=Fraction(0)) for word in words}
    for outcomes, shares in ((words, (3, 1, 2)), (never, (2, 2, 2))):
        run = replace(case.steps["a"], run=ProcedureRun(outcomes))
        routes = walk_chances(replace(case, steps={**case.steps, "a": run})).routes
        found = (routes["a", 0], routes["a", 1], routes["b", 0])
        assert found == tuple(Fraction(share, 10) for share in shares)


def test_a_fix_without_any_weight_counts_as_the_average(tree) -> None:
    """With weights of 2 and 4 beside it, it counts 3."""
    chances = walk_chances(tree(check("a", "x", "y", "z") + ends("x", y=2, z=4)))
    assert chances.ends["x"] == Fraction(3, 9)


def test_without_any_weight_every_fix_is_equally_likely(tree) -> None:
    """Without weights, no fix is more usual than another."""
    chances = walk_chances(tree(check("a", "x", "b") + check("b", "y", "z") + ends("x", "y", "z")))
    assert set(chances.ends.values()) == {Fraction(1, 3)}


STOPS = """
gone:
  stop: Not here today
  kind: not-found
"""


def test_a_stop_counts_zero_without_a_weight(tree) -> None:
    """A stop is not a cause, but with a weight it takes time."""
    text = check("a", "x", "gone") + ends(x=3) + STOPS
    assert walk_chances(tree(text)).ends == {"x": Fraction(1), "gone": Fraction(0)}
    assert walk_chances(tree(text + "  weight: 1\n")).ends == {
        "x": Fraction(3, 4),
        "gone": Fraction(1, 4),
    }


def test_where_all_weights_are_zero_every_fix_counts_as_much(tree) -> None:
    """A walk still ends somewhere: at the fixes alone, not at a stop."""
    chances = walk_chances(tree(check("a", "x", "y", "gone") + ends(x=0, y=0) + STOPS))
    assert chances.ends == {"x": Fraction(1, 2), "y": Fraction(1, 2), "gone": Fraction(0)}


def test_a_tree_without_a_fix_counts_every_end(tree) -> None:
    """In a tree that only sorts cases, every end is equally likely."""
    chances = walk_chances(tree(check("a", "gone", "other/tree", "other/one") + STOPS))
    assert (
        chances.ends["gone"] == chances.routes["a", 1] == chances.routes["a", 2] == Fraction(1, 3)
    )


def test_a_handoff_takes_the_weight_of_its_result(tree) -> None:
    """One of four walks continues in another tree."""
    chances = walk_chances(tree(check("a", "x", "other/tree weight: 1") + ends(x=3)))
    assert chances.routes["a", 1] == Fraction(1, 4)
    assert chances.ends["x"] == Fraction(3, 4)


def test_a_weight_on_an_edge_goes_on_to_an_end_without_one(tree) -> None:
    """One of four walks is towed, and that is the end of it."""
    tow = "tow:\n  action: Tow it\n  then: gone\n"
    chances = walk_chances(tree(check("a", "x", "tow weight: 1") + ends(x=3) + tow + STOPS))
    assert chances.routes["tow", 0] == chances.ends["gone"] == Fraction(1, 4)


def test_of_a_tree_the_last_try_has_its_share_as_any_edge(tree) -> None:
    """Half of the walks that end at the battery are those that charged it too often."""
    charge = "charge:\n  action: Charge it\n  at_most: 2\n  spent: x\n  then: a\n"
    chances = walk_chances(
        tree(check("a", "x", "charge chance: 0.5", "y") + ends(x=2, y=2) + charge)
    )
    assert chances.routes["a", 0] == chances.steps["charge"] == Fraction(1, 4)


def test_an_edge_to_an_action_with_a_handoff_may_carry_the_weight(tree) -> None:
    """The weight is on the result; the action between can't have one."""
    chances = walk_chances(
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
    assert chances.routes["tow", 0] == Fraction(1, 4)


def test_a_loop_leads_to_no_end_of_its_own(tree) -> None:
    """Charging the battery and measuring again adds no end."""
    chances = walk_chances(
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
    assert chances.steps["charge"] == 0
    assert chances.ends == {"x": Fraction(1, 4), "y": Fraction(3, 4)}


def test_cannot_test_counts_only_if_nothing_else_leads_to_its_target(tree) -> None:
    """`cannot_test` is an unusual exit of a step."""
    checks = check("a", "x", "y") + "  cannot_test: "
    assert walk_chances(tree(checks + "x\n" + ends(x=1, y=1))).routes["a", 2] == 0
    assert walk_chances(tree(checks + "z\n" + ends(x=1, y=1, z=2))).routes["a", 2] == Fraction(1, 2)


def test_a_walk_goes_on_behind_a_fix_that_did_not_help(tree) -> None:
    """In five of eight walks, the new belt is followed by an alternator."""
    chances = walk_chances(
        tree("""
a:
  check: Is the belt good?
  results:
    - {result: no, branch: belt}
belt:
  fix: Replace the belt
  cause: It slips
  weight: 3
  still_there: b
""" + check("b", "alternator") + ends(alternator=5)))  # fmt: skip
    assert chances.steps["belt"] == 1
    assert chances.ends == {"belt": Fraction(3, 8), "alternator": Fraction(5, 8)}


def test_unreachable_steps_have_no_chance(tree) -> None:
    """The check reports an unreachable step; the chances don't fail."""
    chances = walk_chances(tree(check("a", "x") + check("lost", "y") + ends(x=1, y=1)))
    assert chances.steps["lost"] == 0
    assert "y" not in chances.ends


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_the_chances_of_all_ends_add_up_to_one(acyclic: st.SearchStrategy[Tree], data) -> None:
    """Exactly 1, and each chance is its weight's share."""
    random_tree = data.draw(acyclic)
    chances = walk_chances(random_tree)
    assert sum(chances.ends.values()) == 1
    weights = {step: Fraction(random_tree.steps[step].body.weight) for step in chances.ends}
    total = sum(weights.values())
    assert chances.ends == {step: weight / total for step, weight in weights.items()}


@given(data=st.data())
@settings(max_examples=60, deadline=None)
def test_as_many_walks_leave_a_step_as_come_to_it(acyclic: st.SearchStrategy[Tree], data) -> None:
    """No walk is lost or added between two steps."""
    random_tree = data.draw(acyclic)
    chances = walk_chances(random_tree)
    for step in random_tree.steps.values():
        out = sum(share for (source, _), share in chances.routes.items() if source == step.id)
        assert chances.steps[step.id] == out + chances.ends.get(step.id, 0)


def test_a_return_step_counts_once_without_weights_and_never_beside_them() -> None:
    """Of a procedure: a result that returns counts 1 as well; a stated weight takes its place."""
    text = """\
title: Is the feed good?
returns: [good, bad, worn]
steps:
  feed:
    check: Does the bulb glow?
    results:
      - {result: bright, return: good}
      - {result: dim, branch: dim%s}
      - {result: dark, branch: dark}
  dim: {return: worn}
  dark: {return: bad}
"""
    for weight, shares in (("", (1, 1, 1)), (", weight: 3", (1, 3, 1))):
        source = decode("kb/procedures/feed.yml", (text % weight).encode())
        assert isinstance(source, Source)
        procedure, findings = procedure_from(source)
        assert procedure
        assert not findings
        chances = walk_chances(procedure.tree)
        good = 1 - sum(chances.ends.values())
        found = (good, chances.ends["dim"], chances.ends["dark"])
        assert found == tuple(Fraction(share, sum(shares)) for share in shares)
