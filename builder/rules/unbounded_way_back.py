"""A loop back to an earlier step that can repeat forever: no step on it has `at_most`. Also a list
that is typed at the vehicle, on a step without `at_most`.

Why: A battery that won't take a charge gets charged again and again, and the vehicle sits in the
bay.

Wrong:

    voltage:
      check: Does the battery hold its charge?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: charge}
    charge:
      action: Charge the battery
      then: voltage

Right:

    voltage:
      check: Does the battery hold its charge?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: charge}
    charge:
      action: Charge the battery
      at_most: 1
      spent: repair
      then: voltage

Fix: Give a step of the loop `at_most`, and `spent` with the step that comes after the last try;
without `spent` the walk ends at the shop's `stuck`.
"""

from collections.abc import Iterator

from builder.graph.tree_graph import is_unbounded, loops_in
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.rules.shared.close_names import step_meant
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.unreached import first_unreached

RULE = Rule(
    name="unbounded-way-back",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A loop back that can repeat forever.",
)
WHY = "the vehicle sits in the bay with no stopping point"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every loop without a limit, and every list without an end."""
    graph = facts.graph
    moves = [move for move in graph.moves if is_unbounded(facts.tree, move)]
    for loop in loops_in(moves, graph.starts):
        if loop.closing.source in graph.can_end:  # otherwise `endless-loop` reports it
            first = loop.steps[0]
            unreached = first_unreached(facts)
            limit = f"add `at_most: 2` and `spent: <step>` to `{first}`"
            to_itself = set(loop.steps) == {first}
            yield RULE.finding(
                loop.closing.route.exit.branch.text.at,
                f"this sends the tech from `{first}` back to `{first}`, without end"
                if to_itself
                else f"this loop can repeat forever: {loop.text}",
                WHY,
                f"{step_meant(unreached)}; only if the loop is right, {limit}"
                if unreached
                else f"write the next step's name, or {limit}"
                if to_itself
                else f"{limit}, or fix the branch",
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
                f"list `{name}` is typed at the vehicle and can go on forever",
                WHY,
                "add `at_most` to the step, or write the list under `lists:` at the top",
            )
