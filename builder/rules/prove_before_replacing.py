"""A fix that replaces a module, to which a path leads on which the supply, the ground under load or
the network has not been proved although the module's record asks for it in `prove_first`.

Why: A module that had no ground looks dead and is not; the customer pays for a part that was good.

Wrong:

    answers:
      check: Steering unit answers the scan tool
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: unit}
    unit:
      fix: Fit a new unit and set it up
      cause: Unit faulty inside
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]

Right:

    answers:
      check: Steering unit answers the scan tool
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: feed}
    feed:
      check: Plus, ground under load and both wires good
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is not, branch: repair}
    unit:
      fix: Fit a new unit and set it up
      cause: Unit faulty inside
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]

Fix: Let steps with `does: [check-supply]`, `[check-ground]` and `[check-network]`, their good
results marked `done: yes`, come first on every path.
"""

from collections.abc import Iterator

from builder.graph.requirements import PROVE_FIRST, Requirement
from builder.model.finding import Finding, Severity
from builder.model.tree import Fix, Replaces
from builder.rules.shared.order import entering_handoffs, path_as_text, reached_steps, unmet
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="prove-before-replacing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A module is replaced before supply, ground and network are proved.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every module that can be replaced before it is proved to be at fault."""
    replacing = {
        str(step.id): step.body.replaces
        for step in facts.steps
        if isinstance(step.body, Fix) and step.body.replaces
    }
    for wanted, requirement in PROVE_FIRST.items():
        asking = {name: one for name, one in replacing.items() if _asks(facts, one, wanted)}
        if asking:
            yield from _unproved(facts, asking, wanted, requirement)


def _asks(facts: Facts, replaces: Replaces, wanted: str) -> bool:
    module = facts.library.modules.get(replaces.module)
    return module is not None and wanted in module.prove_first


def _unproved(
    facts: Facts, asking: dict[str, Replaces], wanted: str, requirement: Requirement
) -> Iterator[Finding]:
    found = unmet(facts, requirement)
    for step, place in reached_steps(found, facts):
        if step.id in asking:
            module = asking[step.id].module
            yield RULE.finding(
                module.at,
                f"the {wanted} is not proved before the `{module}` is replaced: "
                f"{path_as_text(found, place)}",
                "a good module would be condemned, and the customer would pay for it",
                f"let a step with `does: [{requirement.met_by}]` come first on this path",
                *entering_handoffs(facts, found, place),
            )
