"""A word that is wider than a box of the chart, so that it breaks in the middle.

Why: On the wall, half a word on one line and half on the next gets misread from the bay.

Wrong:

    relay:
      check: Is steeringcolumnlockrelaysocket tight?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    relay:
      check: Is the steering lock relay socket tight?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write it as several words, or join them with hyphens.
"""

import re
from collections.abc import Iterator
from functools import lru_cache

from builder.chart.fonts import medium
from builder.chart.spacing import LONGEST_WORD, TEXT
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.rules.shared.published_text import position_in
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="too-long-for-box",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A word that is wider than its box on the chart.",
)
SURE_TO_FIT = 8  # characters; even that many capitals fit the box
PIECE = re.compile(rf"[^\s/-]{{{SURE_TO_FIT + 1},}}")  # the chart breaks after `-` and `/`


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every word on the chart that has to break."""
    for text in _on_the_chart(facts):
        for match in PIECE.finditer(text):
            if _is_too_wide(match.group()):
                yield RULE.finding(
                    position_in(text, match.start(), len(match.group())),
                    f"`{match.group()}` is wider than a box of the chart",
                    "broken in the middle, it gets misread from the bay",
                    "write it as several words, or join them with hyphens",
                )


@lru_cache(maxsize=20_000)  # the trees of a shop share most of their words
def _is_too_wide(word: str) -> bool:
    return medium().width(word, TEXT) > LONGEST_WORD


def _on_the_chart(facts: Facts) -> Iterator[Text]:
    yield facts.tree.title
    for step in facts.steps:
        yield step.text
        yield from step.when
        if isinstance(step.body, Check):
            yield from (result.text for result in step.body.results if not result.ranges)
            yield from (result.means for result in step.body.results if result.means)
            for reading in step.body.readings:
                if reading.name:
                    yield Text(reading.name, reading.at)
                yield from reading.one_of
        elif isinstance(step.body, Fix):
            yield step.body.cause
