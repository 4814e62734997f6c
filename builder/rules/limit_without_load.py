"""A limit for a voltage drop without the load under which it is measured. A step measures a drop
where it says so, or the name of a reading does, or that of the article it leads to.

Why: Without current there is no drop: a wire that hangs by one strand reads 0.0 V.

Wrong:

    ground:
      check: Voltage drop of the ground side
      when: [key on]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Right:

    ground:
      check: Voltage drop of the ground side
      when: [starter cranking]
      reading: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - {result: at most 0.2, branch: all-good}
        - {result: above 0.2, branch: repair}

Fix: Say in `when` what draws current: `headlamps and blower on`, `load of 5 A`, `cranking`.
"""

import re
from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.tree import Check, Step
from builder.rules.shared.limits import conditions_of
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import same_kind

RULE = Rule(
    name="limit-without-load",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A limit for a voltage drop without its load.",
)
DROP = re.compile(r"\bdrops?\b", re.IGNORECASE)
LOAD = re.compile(
    r"\bload|lamps?\b|blower|heater|\bfans?\b|crank|starter|motor|pump|engine (?!off)|idling"
    r"|running|\bheld\b|drawing|current|commanded|working|\d ?m?A\b",
    re.IGNORECASE,
)
NO_LOAD = re.compile(r"\b(?:off|no|without)\b", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every voltage drop that is measured under nobody knows what load."""
    for step in facts.steps:
        if _is_drop(step) and not _is_loaded(conditions_of(facts, step)):
            yield RULE.finding(
                step.text.at,
                f"the limit of `{step.text}` counts under a load, and none is said",
                "without current there is no drop, and a wire on its last strand reads 0.0 V",
                "say in `when` what draws current, such as `headlamps on` or `load of 5 A`",
            )


def _is_drop(step: Step) -> bool:
    body = step.body
    if not isinstance(body, Check):
        return False
    names = [*(one.name for one in body.readings), *(one.name for one in body.computed)]
    if not any(map(DROP.search, (step.text, step.how_to or "", *names))):
        return False
    units = [one.unit for one in body.readings] + ([body.figure.unit] if body.figure else [])
    return any(same_kind(unit, "V") for unit in units)


def _is_loaded(said: str) -> bool:
    return any(LOAD.search(part) and not NO_LOAD.search(part) for part in said.split("; "))
