"""A system of the vehicle that is not in the list of systems.

Why: The tree would be missing from the page of its system.

Wrong:

    # trees/charging/lamp-on.yml
    format: 1
    title: Charging lamp on
    status: ready
    system: chargin
    symptom: {words: [battery light on]}
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    # trees/charging/lamp-on.yml
    format: 1
    title: Charging lamp on
    status: ready
    system: charging
    symptom: {words: [battery light on]}
    written: {by: R. Osei, date: 2026-03-02}
    reviewed: {by: M. Lind, date: 2026-09-01}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write the system as `kb/systems.yml` has it, or add it there.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import unknown_names

RULE = Rule(
    name="no-such-system",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A system that is not in the list of systems.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding where the tree's system is not known."""
    why = "the tree would be missing from the page of its system"
    yield from unknown_names(
        RULE, [facts.tree.system], facts.library.systems, why, "kb/systems.yml"
    )
