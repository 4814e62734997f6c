"""A sign that the letters of the charts and prints do not have; in a tree, or in the knowledge that
is printed with it.

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

Fix: Write it as a word.
"""

from collections.abc import Iterable, Iterator
from datetime import date

from builder.chart.fonts import medium
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import position_in, texts_of_knowledge
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unprintable-sign",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A sign that the charts and prints cannot show.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every text of a tree with a sign that its letters lack."""
    yield from _unprintable((*facts.texts, *facts.tree.symptom.words))  # the wall chart quotes them


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every hazard, tool, lamp, system or module with such a sign."""
    names = (library.tools, library.lamps, library.systems, library.modules)
    yield from _unprintable(texts_of_knowledge(library))
    yield from _unprintable(one.name for kind in names for one in kind.values())


def _unprintable(texts: Iterable[Text]) -> Iterator[Finding]:
    known = medium().advances
    for text in texts:
        if not text.isascii():
            for at, sign in enumerate(text):
                if sign not in known and not sign.isspace():
                    yield RULE.finding(
                        position_in(text, at, 1),
                        f"the sign `{sign}` (number {ord(sign):x}) cannot be printed",
                        "on paper an empty box stands in its place",
                        "write it as a word",
                    )
                    break
