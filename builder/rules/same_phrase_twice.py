"""The same phrase twice among the results of one check; letter case and blanks make no difference.

Why: Two ways on for one answer: whoever stands at the vehicle has to guess.

Wrong:

    lamp:
      check: Lamp lights
      results:
        - {result: yes, branch: all-good}
        - {result: "Yes ", branch: repair}

Right:

    lamp:
      check: Lamp lights
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Say what sets the two apart, or delete one of them.
"""

from collections.abc import Iterable, Iterator

from builder.model.finding import Finding, Related, Severity
from builder.model.text import Text
from builder.model.tree import Check
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="same-phrase-twice",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="The same phrase twice among the results of a check.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every phrase that stands above it already."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            yield from _twice(result.said for result in step.body.results if not result.ranges)
            for reading in step.body.readings:
                yield from _twice(reading.one_of)


def _twice(phrases: Iterable[Text]) -> Iterator[Finding]:
    seen: dict[str, Text] = {}
    for phrase in phrases:
        first = seen.setdefault(" ".join(phrase.casefold().split()), phrase)
        if first is not phrase:
            yield RULE.finding(
                phrase.at,
                f"`{phrase}` stands here a second time{_as(phrase, first)}",
                "one answer has two ways on, and whoever reads it has to guess",
                "say what sets the two apart, or delete one",
                Related(first.at, "first written here"),
            )


def _as(phrase: Text, first: Text) -> str:
    """Say that capitals do not count, where that is all that sets the two apart."""
    return "" if phrase == first else f", as `{first}`: capitals and blanks do not count"
