"""A tool that is not in the list of tools; also in an article.

Why: Nobody can fetch what the shop does not have, and the page cannot say where it is kept.

Wrong:

    belt:
      check: Belt tight and dry
      tools: [multimetre]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: Belt tight and dry
      tools: [multimeter]
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the tool as `kb/tools.yml` has it, or add it there.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.suggestions import unknown_names

RULE = Rule(
    name="no-such-tool",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A tool that is not in the list of tools.",
)
WHY = "nobody can fetch a tool that the shop does not know"
WHERE = "kb/tools.yml"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every tool of a step that is not known."""
    names = (tool for step in facts.steps for tool in step.tools)
    yield from unknown_names(RULE, names, facts.library.tools, WHY, WHERE)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every tool of an article that is not known."""
    names = (tool for article in library.how_tos.values() for tool in article.tools)
    yield from unknown_names(RULE, names, library.tools, WHY, WHERE)
