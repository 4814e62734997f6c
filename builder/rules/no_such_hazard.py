"""A hazard that isn't in the list of hazards: in a step, a condition, an article or a module.

Why: The page and the print leave out the caution that keeps a hand out of the fan.

Wrong:

    belt:
      check: Is the belt tight and dry?
      hazards: [rotating-part]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      hazards: [rotating-parts]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the hazard as it is in `kb/hazards.yml`, or add it there with its signal word.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-hazard",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A hazard that isn't in the list of hazards.",
)
WHY = "the page and the print leave out its caution"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every hazard of a step that doesn't exist."""
    names = (hazard for step in facts.steps for hazard in step.hazards)
    yield from unknown_names(RULE, names, facts.library, WHY)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every other hazard that doesn't exist."""
    articles = (hazard for article in library.how_tos.values() for hazard in article.hazards)
    yield from unknown_names(RULE, articles, library, WHY)
    steps = (step for module in library.modules.values() for step in module.set_up)
    records = (hazard for step in steps for hazard in step.hazards)
    yield from unknown_names(RULE, records, library, WHY)
    states = (hazard for one in library.conditions.values() for hazard in one.hazards)
    yield from unknown_names(RULE, states, library, WHY)
