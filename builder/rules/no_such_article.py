"""A how-to article that doesn't exist.

Why: The step sends the tech to an article that isn't there.

Wrong:

    belt:
      check: Is the belt tight and dry?
      how_to: blet
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      how_to: belt
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the name of a file in `kb/how-to/` without its ending, or write the article.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-article",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A how-to article that doesn't exist.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every article that doesn't exist."""
    names = (step.how_to for step in facts.steps if step.how_to)
    why = "the step sends the tech to an article that isn't there"
    yield from unknown_names(RULE, names, facts.library, why)
