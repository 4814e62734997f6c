"""A spec that isn't in `kb/specs.yml`: in a check, or in a vehicle's file.

Why: The walk has no unit and no limits for the reading, so every value looks good.

Wrong:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: x}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: riple
        results: {within spec: all-good, above spec: repair}

Right:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: x}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: ripple
        results: {within spec: all-good, above spec: repair}

Fix: Write the name as it is in `kb/specs.yml`, or add the spec there.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-spec",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A spec that isn't in the list of specs.",
)
WHY = "the walk has no unit and no limits for the reading"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every spec of a check that doesn't exist."""
    bodies = (step.body for step in facts.steps if isinstance(step.body, Check))
    names = (reading.spec for body in bodies for reading in body.readings if reading.spec)
    fixed = (name for name in names if not name.startswith("<"))
    yield from unknown_names(RULE, fixed, facts.library, WHY)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every spec of a vehicle that doesn't exist."""
    names = (
        Text(name, spec.good.text.at)
        for vehicle in library.vehicles.values()
        for name, spec in vehicle.specs.items()
    )
    yield from unknown_names(RULE, names, library, WHY)
