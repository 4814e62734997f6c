"""A sign that the letters of the charts and prints do not have.

Why: On paper an empty box stands in its place, and nobody knows what was meant.

Wrong:

    lamp:
      check: Lamp 💡 lights
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    lamp:
      check: Lamp lights
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Mend: Write it as a word.
"""

from collections.abc import Iterator

from builder.chart.fonts import medium
from builder.model.finding import Finding, Severity
from builder.rules.published import place_in
from builder.rules.rule import Facts, Rule

RULE = Rule(
    name="unprintable-sign",
    family="words",
    severity=Severity.WARNING,
    summary="A sign that the charts and prints cannot show.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every text with a sign that its letters lack."""
    known = medium().advances
    for text in facts.texts:
        if not text.isascii():
            for at, sign in enumerate(text):
                if sign not in known and not sign.isspace():
                    yield RULE.finding(
                        place_in(text, at, 1),
                        f"the sign `{sign}` (number {ord(sign):x}) cannot be printed",
                        "on paper an empty box stands in its place",
                        "write it as a word",
                    )
                    break
