"""A tool that isn't in the list of tools: in a step or an article.

Why: The tech can't get a tool the shop doesn't have, and the page can't say where it's kept.

Wrong:

    belt:
      check: Is the belt tight and dry?
      tools: [multimetre]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Is the belt tight and dry?
      tools: [multimeter]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the tool as it is in `kb/tools.yml`, or add it there.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.close_names import unknown_names
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-tool",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A tool that isn't in the list of tools.",
)
WHY = "the tech can't get a tool the shop doesn't have"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every tool of a step that doesn't exist."""
    names = (tool for step in facts.steps for tool in step.tools)
    yield from unknown_names(RULE, names, facts.library, WHY)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every tool of an article that doesn't exist."""
    names = (tool for article in library.how_tos.values() for tool in article.tools)
    yield from unknown_names(RULE, names, library, WHY)
