"""A limit for a voltage drop without the load. A step measures a drop where its text says so, or
the name of a reading or of its article does.

Why: With no current flowing there is no drop: a wire hanging by one strand reads 0.0 V.

Wrong:

    ground:
      check: Measure voltage drop on the ground side
      when: [key-on]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Right:

    ground:
      check: Measure voltage drop on the ground side
      when: [key-on, loads-on]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Fix: Name in `when` a state that counts as a load, such as `loads-on` or `{loaded: 5 A}`.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.conditions import CountsAs
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.limits import is_met_by_state
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import same_kind

RULE = Rule(
    name="limit-without-load",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit for a voltage drop without its load.",
)
DROP = re.compile(r"\bdrops?\b", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every voltage drop with a limit and no load."""
    for step in facts.steps:
        if _is_drop(step) and not is_met_by_state(facts, step, CountsAs.LOAD):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` has a limit but no load",
                "with no current flowing, a bad wire reads 0.0 V",
                _hint(facts),
            )


def _hint(facts: Facts) -> str:
    names = [f"`{name}`" for name, one in facts.library.conditions.items()
             if one.counts_as is CountsAs.LOAD]  # fmt: skip
    if not names:
        return "add a state with `counts_as: load` to kb/conditions.yml, and name it in `when`"
    return f"add to `when` what draws current: {' or '.join(names)}"


def _is_drop(step: Step) -> bool:
    body = step.body
    if not isinstance(body, Check):
        return False
    units = [reading.unit for reading in body.readings]
    units += [body.figure.unit] if body.figure else []
    if not any(same_kind(unit, "V") for unit in units):
        return False
    names = [reading.name for reading in body.readings]
    names += [computed.name for computed in body.computed]
    return any(map(DROP.search, (step.text, step.how_to or "", *names)))
