"""A check that tests the power, the ground or the network before a module is replaced or set up,
where no result is marked `done: yes`.

Why: Without the mark every result counts as proof, the bad one too: a good module gets replaced on
a bad power wire.

Wrong:

    feed:
      check: Are power, loaded ground, and network good?
      does: [check-supply, check-ground, check-network]
      results:
        - {result: all good, branch: unit}
        - {result: one is bad, branch: repair}
    unit:
      fix: Replace the module and set it up
      cause: The module failed internally
      weight: 1
      replaces: {module: steering-unit, part: new}
      verify: [road test]

Right:

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

Fix: Add `done: yes` to each result that means good.
"""

from collections.abc import Iterator

from builder.graph.requirements import PROVE_FIRST, WRITING_VERBS
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.tree import Deed
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unmarked-test",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A test whose good result isn't marked.",
)
TESTS = {requirement.met_by: proof for proof, requirement in PROVE_FIRST.items()}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every test that this tree relies on, where no result is marked."""
    needed = _needed(facts)
    for step in facts.steps:
        tests = [deed for deed in step.does if TESTS.get(deed.verb) in needed]
        if tests and isinstance(step.body, Check) and _is_unmarked(step.body):
            yield _finding(step.body, tests)


def _needed(facts: Facts) -> set[str]:
    """Return what must be proved for the modules that the tree replaces or writes to."""
    needed = {"supply"} if any(deed.verb in WRITING_VERBS for step in facts.steps
                               for deed in step.does) else set()  # fmt: skip
    for step in facts.steps:
        if isinstance(step.body, Fix) and step.body.replaces:
            module = facts.library.modules.get(step.body.replaces.module)
            needed |= set(module.prove_first) if module else set()
    return needed


def _is_unmarked(check: Check) -> bool:
    ways = {str(result.branch.text) for result in check.results}
    return len(ways) > 1 and not any(result.done for result in check.results)


def _finding(check: Check, tests: list[Deed]) -> Finding:
    names = " and ".join(f"`{deed.text}`" for deed in tests)
    results = " or ".join(f"`{one.text}` (line {one.text.at.line})" for one in check.results)
    lined = any(one.branch.text.at.line != one.text.at.line for one in check.results)
    where = ", on a line of its own above its `branch:`" if lined else ""
    return RULE.finding(
        tests[0].text.at,
        f"no result of this check is marked as the good one for {names}",
        "a bad result would count as proof too, and a good module gets replaced",
        f"add `done: yes` to the result that means good{where}: {results}",
    )
