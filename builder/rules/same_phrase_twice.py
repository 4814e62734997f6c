"""The same phrase twice among the results of one check. Case and spaces don't count.

Why: One answer has two branches: the tech has to guess.

Wrong:

    lamp:
      check: Does the light come on?
      results:
        - {result: yes, branch: all-good}
        - {result: "Yes ", branch: repair}

Right:

    lamp:
      check: Does the light come on?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Say how the two differ, or delete one of them.
"""

from collections.abc import Iterable, Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Related, Severity
from builder.model.text import Text
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="same-phrase-twice",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="The same phrase twice among the results of a check.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every phrase that repeats one above it."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            yield from _twice(result.text for result in step.body.results if not result.ranges)
            for reading in step.body.readings:
                yield from _twice(reading.one_of)


def _twice(phrases: Iterable[Text]) -> Iterator[Finding]:
    seen: dict[str, Text] = {}
    for phrase in phrases:
        first = seen.setdefault(" ".join(phrase.casefold().split()), phrase)
        if first is not phrase:
            yield RULE.finding(
                phrase.at,
                f"`{phrase}` is used twice{_differing_in_case(phrase, first)}",
                "one answer has two branches: the tech has to guess",
                "say how the two differ, or delete one",
                Related(first.at, "first written here"),
            )


def _differing_in_case(phrase: Text, first: Text) -> str:
    """Explain that case and spaces don't count, where the two differ in nothing else."""
    return "" if phrase == first else f", first as `{first}`: case and spaces don't count"
