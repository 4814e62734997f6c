"""A fix that replaces a module on a path that hasn't tested its power, its ground under load or the
network, although the module's record asks for it in `prove_first`.

Why: A module without a ground looks dead and isn't: the customer pays for a part that was good.

Wrong:

    answers:
      check: Does the steering module respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: unit}
    unit:
      fix: Replace the module and set it up
      cause: The module failed internally
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]

Right:

    answers:
      check: Does the steering module respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: feed}
    feed:
      check: Are power, loaded ground, and network good?
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, done: yes, branch: unit}
        - {result: one is bad, branch: repair}
    unit:
      fix: Replace the module and set it up
      cause: The module failed internally
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]

Fix: Put steps with `does: [check-supply]`, `[check-ground]` and `[check-network]` first on every
path, their good results marked `done: yes`, or a step that runs a procedure with them. A task that
names a part, such as `check-ground eps-module`, tests that part alone.
"""

from collections.abc import Iterator
from itertools import product

from builder.graph.requirements import PROVE_FIRST, Requirement
from builder.model.ends import Fix, Replaces
from builder.model.finding import Finding, Severity
from builder.rules.shared.order import entering_handoffs, path_as_text, reached_steps, unmet
from builder.rules.shared.rule import Facts, Family, Rule

TESTED = {"supply": "power", "ground": "ground under load", "network": "network"}
RULE = Rule(
    name="prove-before-replacing",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A module is replaced before its power, ground and network are tested.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every module that a path replaces without the tests it asks for."""
    replacing = {
        str(step.id): step.body.replaces
        for step in facts.steps
        if isinstance(step.body, Fix) and step.body.replaces
    }
    modules = dict.fromkeys(str(one.module) for one in replacing.values())
    for module, (proof, requirement) in product(modules, PROVE_FIRST.items()):
        if _asks_for(facts, module, proof):
            asking = {name: one for name, one in replacing.items() if one.module == module}
            yield from _untested(facts, asking, proof, requirement.at(module))


def _asks_for(facts: Facts, module: str, proof: str) -> bool:
    """Whether the record asks for a proof; of a module that is asked for, any of the answers'."""
    answers = (one.one_of for one in facts.tree.asks if f"<{one.name}>" == module)
    names = [str(name) for names in answers for name in names] or [module]
    records = filter(None, map(facts.library.modules.get, names))
    return any(proof in record.prove_first for record in records)


def _untested(
    facts: Facts, asking: dict[str, Replaces], proof: str, requirement: Requirement
) -> Iterator[Finding]:
    reached = unmet(facts, requirement)
    for step, place in reached_steps(reached, facts):
        if step.id in asking:
            module = asking[step.id].module
            yield RULE.finding(
                module.at,
                f"`{module}` is replaced before its {TESTED[proof]} is tested: "
                f"{path_as_text(reached, place)}",
                "a good module gets replaced at the customer's cost",
                f"add an earlier step with `does: [{requirement.met_by}]`",
                *entering_handoffs(facts, reached, place),
            )
