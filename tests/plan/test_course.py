"""What is left of a tree when it is walked straight through."""

from builder.plan.course import course

TREE = """
supply:
  check: Battery at rest
  results:
    - {result: low, branch: charge, chance: 0.1}
    - {result: good, branch: unit}
charge:
  action: Charge it
  at_most: 1
  spent: battery
  then: supply
battery:
  fix: Replace the battery
  cause: It holds no charge
  still_there: supply
unit:
  check: Set the unit up
  at_most: 3
  results:
    - {result: done, branch: well}
    - {result: refused, branch: park}
    - {result: silent, branch: network/silent}
park:
  action: Park and set the brake
  then: back
well:
  stop: All is well
  kind: not-found
"""


def test_the_course_has_every_way_on_and_no_way_back(tree) -> None:
    """What comes back (charging, parking) is left out, what ends (the spent battery) stays."""
    along = course(tree(TREE))
    assert {(way.source, way.to) for ways in along.out.values() for way in ways} == {
        ("supply", "charge"),
        ("supply", "unit"),
        ("charge", "battery"),
        ("unit", "well"),
        ("unit", None),
    }


def test_every_step_stands_before_the_steps_it_leads_to(tree) -> None:
    """Whoever goes through the order has done what comes first."""
    along = course(tree(TREE))
    assert along.order[0] == "supply"
    for step, ways in along.out.items():
        assert all(along.order.index(step) < along.order.index(w.to) for w in ways if w.to)


def test_a_tree_that_never_ends_has_its_first_step_alone(tree) -> None:
    """The check reports it; here it is no reason to fail."""
    along = course(
        tree("""
a:
  action: Look
  then: b
b:
  action: Look again
  then: a
""")
    )
    assert along.order == ("a",)
    assert not any(along.out.values())


LOOK = """
look:
  check: Which is it
  results:
    - {{result: this, branch: mend}}
    - {{result: that, branch: {that}}}
  could_not: other/tree
mend:
  fix: Mend it
  cause: It is old
  still_there: other/tree#step
"""


def test_an_unusual_handoff_counts_where_nothing_else_leads_to_that_tree(tree) -> None:
    """Another tree is a target as a step is; `other/tree#step` is another place than its start."""
    alone = course(tree(LOOK.format(that="mend")))
    assert [way.target for way in alone.out["look"]] == ["mend", "mend", "other/tree"]
    assert [way.target for way in alone.out["mend"]] == ["other/tree#step"]
    beside = course(tree(LOOK.format(that="other/tree")))
    assert [way.target for way in beside.out["look"]] == ["mend", "other/tree"]
