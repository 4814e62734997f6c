"""A resistance that is measured without saying that the power is off.

Why: On a live circuit the reading means nothing, and it can blow the meter's fuse.

Wrong:

    coil:
      check: Measure resistance of the relay coil
      when: [relay plugged in]
      reading: {unit: ohm, from: 0, to: OL, resolution: 0.1, origin: common practice}
      results:
        - {result: below 60, branch: repair}
        - {result: 60 to 110, branch: all-good}
        - {result: above 110, branch: repair}

Right:

    coil:
      check: Measure resistance of the relay coil
      when: [power off, relay out of its socket]
      reading: {unit: ohm, from: 0, to: OL, resolution: 0.1, origin: common practice}
      results:
        - {result: below 60, branch: repair}
        - {result: 60 to 110, branch: all-good}
        - {result: above 110, branch: repair}

Fix: Name in `when` a state that takes the power off, such as `battery-disconnected`; in the first
version of the format, write `power off` or what takes the part off its power.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.conditions import CountsAs
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.limits import conditions_of, is_met_by_state
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import same_kind

RULE = Rule(
    name="resistance-under-power",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A resistance without `power off`.",
)
OFF = re.compile(
    r"power off|(?:battery|minus|plus|clamps?|supply) (?:\w+ )?off|disconnected|unplugged"
    r"|plugs? (?:\w+ )*off|proved dead|taken out|on the bench|in the hand|out of (?:its|the) \w+",
    re.IGNORECASE,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every resistance on a circuit that may be live."""
    for step in facts.steps:
        if _is_resistance(step) and not _is_off(facts, step):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` measures resistance, but `when` doesn't say the power is off",
                "on a live circuit the reading means nothing and the meter can be damaged",
                _hint(facts),
            )


def _is_off(facts: Facts, step: Step) -> bool:
    by_state = is_met_by_state(facts, step, CountsAs.POWER_OFF)
    return bool(OFF.search(conditions_of(facts, step))) if by_state is None else by_state


def _hint(facts: Facts) -> str:
    names = [f"`{name}`" for name, one in facts.library.conditions.items()
             if one.counts_as is CountsAs.POWER_OFF]  # fmt: skip
    if facts.tree.format == 1 or not names:
        return "add `power off` to `when`"
    return f"add {' or '.join(names)} to `when`"


def _is_resistance(step: Step) -> bool:
    body = step.body
    if not isinstance(body, Check):
        return False
    units = [reading.unit for reading in body.readings]
    units += [body.figure.unit] if body.figure else []
    return any(same_kind(unit, "ohm") for unit in units)
