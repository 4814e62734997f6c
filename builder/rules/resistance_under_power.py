"""A resistance that is measured without saying that the power is off.

Why: On a live circuit the reading means nothing, and it can blow the meter's fuse.

Wrong:

    coil:
      check: Measure resistance of the relay coil
      when: [key-off]
      reading: {unit: ohm, from: 0, to: OL, resolution: 0.1, origin: common practice}
      results:
        - {result: below 60, branch: repair}
        - {result: 60 to 110, branch: all-good}
        - {result: above 110, branch: repair}

Right:

    codes:
      action: Save the DTCs of all modules
      does: [record-codes]
      then: coil
    coil:
      check: Measure resistance of the relay coil
      when: [battery-disconnected]
      reading: {unit: ohm, from: 0, to: OL, resolution: 0.1, origin: common practice}
      results:
        - {result: below 60, branch: repair}
        - {result: 60 to 110, branch: all-good}
        - {result: above 110, branch: repair}

Fix: Name in `when` a state that takes the power off, such as `battery-disconnected`.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.conditions import CountsAs
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.limits import is_met_by_state
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import same_kind

RULE = Rule(
    name="resistance-under-power",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A resistance measured where the power may be on.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every resistance on a circuit that may be live."""
    for step in facts.steps:
        if _is_resistance(step) and not is_met_by_state(facts, step, CountsAs.POWER_OFF):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` measures resistance, but `when` doesn't say the power is off",
                "on a live circuit the reading means nothing and the meter can be damaged",
                _hint(facts),
            )


def _hint(facts: Facts) -> str:
    names = [f"`{name}`" for name, one in facts.library.conditions.items()
             if one.counts_as is CountsAs.POWER_OFF]  # fmt: skip
    if not names:
        return "add a state with `counts_as: power off` to kb/conditions.yml, and name it in `when`"
    return f"add {' or '.join(names)} to `when`"


def _is_resistance(step: Step) -> bool:
    body = step.body
    if not isinstance(body, Check):
        return False
    units = [reading.unit for reading in body.readings]
    units += [body.figure.unit] if body.figure else []
    return any(same_kind(unit, "ohm") for unit in units)
