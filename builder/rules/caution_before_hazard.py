"""A step that brings a hazard without a caution: the module's record names the hazard for what the
step does, or the step's article names a DANGER, and neither the step nor an earlier step on every
path names it. The article itself carries its other cautions, since not every use of it brings them.

Why: The tech learns about the hazard with a hand already in it.

Wrong:

    isolation:
      check: Measure isolation of the orange cables
      how_to: isolation-test
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Right:

    isolation:
      check: Measure isolation of the orange cables
      how_to: isolation-test
      hazards: [high-voltage]
      results:
        - {result: good, branch: all-good}
        - {result: bad, branch: repair}

Fix: Add the hazard to `hazards` of the step, or of an earlier step on every path.
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
    summary="A step brings a hazard with no caution before it.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every hazard that a path brings before its caution."""
    causes: dict[str, dict[str, Text]] = defaultdict(dict)
    for step in facts.steps:
        for cause, hazard in _hazards_of(facts.library, step):
            if hazard not in step.hazards:
                causes[hazard].setdefault(step.id, cause)
    for hazard, by_step in causes.items():
        reached = without_caution(facts, hazard)
        for step, place in reached_steps(reached, facts):
            if step.id in by_step:
                cause = by_step[step.id]
                yield RULE.finding(
                    cause.at,
                    f"`{cause}` brings the hazard `{hazard}` with no caution before it: "
                    f"{path_as_text(reached, place)}",
                    "the tech learns about it too late",
                    f"add `hazards: [{hazard}]` to `{step.id}` or an earlier step",
                )


def _is_danger(library: Library, name: str) -> bool:
    hazard = library.hazards.get(name)
    return hazard is not None and hazard.signal is Signal.DANGER


def _hazards_of(library: Library, step: Step) -> Iterator[tuple[Text, str]]:
    """Yield the hazards that a step brings, each with the text that brings it."""
    article = library.how_tos.get(step.how_to) if step.how_to else None
    if article and step.how_to:
        yield from (
            (step.how_to, str(name)) for name in article.hazards if _is_danger(library, name)
        )
    for deed in step.does:
        module = library.modules.get(deed.module) if deed.module else None
        for record in module.set_up if module else ():
            if record.verb == deed.verb:
                yield from ((deed.text, str(hazard)) for hazard in record.hazards)
