"""A hazard that is not in the list of hazards; also in an article or a set-up record.

Why: The page and the print would leave out the caution that keeps a hand out of the fan.

Wrong:

    belt:
      check: Belt tight and dry
      hazards: [rotating-part]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Belt tight and dry
      hazards: [rotating-parts]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the hazard as `kb/hazards.yml` has it, or add it there with its signal word.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import unknown_names

RULE = Rule(
    name="no-such-hazard",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A hazard that is not in the list of hazards.",
)
WHY = "its caution would be missing on the page and on the print"
WHERE = "kb/hazards.yml"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every hazard of a step that is not known."""
    names = (hazard for step in facts.steps for hazard in step.hazards)
    yield from unknown_names(RULE, names, facts.library.hazards, WHY, WHERE)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every hazard of an article or a set-up record that is not known."""
    articles = (hazard for article in library.how_tos.values() for hazard in article.hazards)
    yield from unknown_names(RULE, articles, library.hazards, WHY, WHERE)
    steps = (step for module in library.modules.values() for step in module.set_up)
    records = (hazard for step in steps for hazard in step.hazards)
    yield from unknown_names(RULE, records, library.hazards, WHY, WHERE)
