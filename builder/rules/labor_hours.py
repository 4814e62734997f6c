"""Labor of more than a day on one fix: minutes were written where hours are asked.

Why: The estimate is priced from these hours: 84 minutes become two weeks of labor.

Wrong:

    belt:
      check: Is the belt tight?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: tighten}
    tighten:
      fix: Tighten the belt
      cause: The belt is loose
      hours: 84
      verify: [charging voltage is OK]

Right:

    belt:
      check: Is the belt tight?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: tighten}
    tighten:
      fix: Tighten the belt
      cause: The belt is loose
      hours: 1.4
      verify: [charging voltage is OK]

Fix: Write hours: minutes divided by 60.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Number
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="labor-hours",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="Labor of more than a day on one fix.",
)
MOST = 24  # hours; common practice, no source


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix or option with more hours than a day has."""
    for step in facts.steps:
        if isinstance(step.body, Fix):
            yield from _too_many(step.body.hours)
            for option in step.body.options:
                yield from _too_many(option.hours)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield the same for the hours of a module's record."""
    for module in library.modules.values():
        for hours in module.hours.values():
            yield from _too_many(hours)


def _too_many(hours: Number | None) -> Iterator[Finding]:
    if hours is None or hours <= MOST:
        return
    meant = f"{round(hours / 60, 2).normalize():f}"
    yield RULE.finding(hours.at, f"`{hours:f}` is more than {MOST} hours of labor",
                       "the estimate is priced from these hours",
                       f"write hours, not minutes: `{meant}`" if hours < MOST * 60
                       else "write how many hours it takes to do the job")  # fmt: skip
