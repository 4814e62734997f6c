"""A spec whose numbers fit another unit than the one it names: its unit was changed alone.

The tool of the check tells: it can't show the limits, or the resolution, in the unit of the spec,
and can in another unit that it reads. Or its `origin` tells, with figures in another unit alone.

Why: At most 1 psi has become at most 1 kPa, and a good radiator gets replaced.

Wrong:

    # kb/tools.yml
    pump:
      name: Pump
      reads:
        kPa: {from: 0, to: 250, resolution: 2}
        psi: {from: 0, to: 36, resolution: 0.5}
    # kb/specs.yml
    loss:
      {text: pressure lost, unit: kPa, from: 0, to: 30, resolution: 0.5, good: at most 1,
       origin: common practice}
    # trees/charging/case.yml
    steps:
      cap:
        check: Measure the pressure lost in 10 min
        when: [engine cold]
        tools: [pump]
        spec: loss
        results: {within spec: all-good, above spec: repair}

Right:

    # kb/tools.yml
    pump:
      name: Pump
      reads:
        kPa: {from: 0, to: 250, resolution: 2}
        psi: {from: 0, to: 36, resolution: 0.5}
    # kb/specs.yml
    loss:
      {text: pressure lost, unit: psi, from: 0, to: 30, resolution: 0.5, good: at most 1,
       origin: common practice}
    # trees/charging/case.yml
    steps:
      cap:
        check: Measure the pressure lost in 10 min
        when: [engine cold]
        tools: [pump]
        spec: loss
        results: {within spec: all-good, above spec: repair}

Fix: Write the unit that the numbers are in, or convert all of them, those of the vehicles too.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.spec_units import other_unit, unit_of_origin

RULE = Rule(
    name="spec-unit",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A spec whose numbers fit another unit than the one it names.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding, at the spec, for every check whose tool tells."""
    for step in facts.steps:
        for reading in step.body.readings if isinstance(step.body, Check) else ():
            spec = facts.library.specs.get(str(reading.spec)) if reading.spec else None
            other = other_unit(facts, step, reading) if spec else None
            if spec and other:
                yield RULE.finding(
                    spec.unit.at,
                    f"`{spec.id}` is in {spec.unit}, but its tool {other.why}",
                    "with the numbers of one unit and the name of another, every limit is wrong",
                    f"write `unit: {other.unit}`, or convert the numbers into {spec.unit}, "
                    "those of the vehicles too",
                )


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every spec whose origin has figures in another unit of its quantity."""
    for spec in library.specs.values():
        other = unit_of_origin(spec, library)
        if other:
            yield RULE.finding(
                spec.unit.at,
                f"`{spec.id}` is in {spec.unit}, and its `origin` has figures in {other}",
                "with the numbers of one unit and the name of another, every limit is wrong",
                f"write `unit: {other}`, or convert the numbers into {spec.unit}, those in "
                "`origin` and of the vehicles, too",
            )
