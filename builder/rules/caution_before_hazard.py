"""A step that meets a hazard without a caution: the set-up record of the module names it for what
the step does, or its article names a DANGER, and neither the step nor one before it on every path
does. What else an article warns of stands in the article, for not every use of it meets that.

Why: The technician learns of the hazard with a hand already in it.

Wrong:

    isolation:
      check: Isolation of the orange cables
      how_to: isolation-test
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Right:

    isolation:
      check: Isolation of the orange cables
      how_to: isolation-test
      hazards: [high-voltage]
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Fix: Add the hazard to `hazards` of the step, or of a step through which every path leads before.
"""

from collections import defaultdict
from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.order import path_as_text, reached_steps, without_caution
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="caution-before-hazard",
    family=Family.ORDER,
    severity=Severity.ERROR,
    summary="A step meets a hazard before anybody has been cautioned.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every hazard that is met before its caution."""
    meeting: dict[str, dict[str, Text]] = defaultdict(dict)
    for step in facts.steps:
        for words, hazard in _met(facts.library, step):
            if hazard not in step.hazards:
                meeting[hazard].setdefault(step.id, words)
    for hazard, words_of in meeting.items():
        found = without_caution(facts, hazard)
        for step, place in reached_steps(found, facts):
            if step.id in words_of:
                words = words_of[step.id]
                yield RULE.finding(
                    words.at,
                    f"`{words}` meets the hazard `{hazard}` without a caution: "
                    f"{path_as_text(found, place)}",
                    "the technician learns of the hazard with a hand already in it",
                    f"add `hazards: [{hazard}]` to `{step.id}`, or to a step before it",
                )


def _kills(library: Library, name: str) -> bool:
    hazard = library.hazards.get(name)
    return hazard is not None and hazard.signal is Signal.DANGER


def _met(library: Library, step: Step) -> Iterator[tuple[Text, str]]:
    """Yield the hazards that a step meets, each with the words by which it does."""
    article = library.how_tos.get(step.how_to) if step.how_to else None
    if article and step.how_to:
        yield from ((step.how_to, str(name)) for name in article.hazards if _kills(library, name))
    for deed in step.does:
        module = library.modules.get(deed.module) if deed.module else None
        for record in module.set_up if module else ():
            if record.verb == deed.verb:
                yield from ((deed.text, str(hazard)) for hazard in record.hazards)
