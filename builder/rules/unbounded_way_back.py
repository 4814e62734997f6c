"""A way back to an earlier step with nothing that says how often it may be taken: no step on the
way round has `at_most`. Also a list that is typed at the vehicle, on a step without `at_most`.

Why: A battery that will not charge would be charged for ever, and the customer's car stays in the
bay.

Wrong:

    voltage:
      check: Battery holds its charge
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: charge}
    charge:
      action: Charge the battery
      then: voltage

Right:

    voltage:
      check: Battery holds its charge
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: charge}
    charge:
      action: Charge the battery
      at_most: 1
      spent: repair
      then: voltage

Fix: Give a step on the way round `at_most`, and with `spent` the step that follows when it is used
up; without `spent` the walk ends at the shop's `stuck`.
"""

from collections.abc import Iterator

from builder.graph.tree_graph import is_unbounded, loops_in
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unbounded-way-back",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A way back with nothing that says how often it may be taken.",
)
WHY = "the vehicle would stay in the bay, and nobody knows when to stop"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every way round without a bound, and every list without an end."""
    graph = facts.graph
    moves = [move for move in graph.moves if is_unbounded(facts.tree, move)]
    for loop in loops_in(moves, graph.starts):
        if loop.closing.source in graph.can_end:  # else it is an endless loop, and told as that
            yield RULE.finding(
                loop.closing.route.exit.branch.text.at,
                f"this way back can be taken for ever: {loop.text}",
                WHY,
                f"if it is a slip, name another step; if it is meant, write into "
                f"`{loop.steps[0]}` how often: `at_most: 2`, and the step that follows then: "
                "`spent: its-name`",
            )
    yield from _typed_lists(facts)


def _typed_lists(facts: Facts) -> Iterator[Finding]:
    known = set(facts.tree.lists)
    known.update(name for vehicle in facts.library.vehicles.values() for name in vehicle.lists)
    for step in facts.steps:
        if step.each and step.each[1] not in known and not step.at_most:
            name: Text = step.each[1]
            yield RULE.finding(
                name.at,
                f"the list `{name}` is typed at the vehicle and has no end",
                WHY,
                "give the step `at_most`, or write the list at the head under `lists:`",
            )
