"""An `otherwise` over several readings: it takes every combination that nobody thought of.

Why: A combination that should have had an answer of its own goes the way of the rest unseen.

Wrong:

    feed:
      check: Voltage drop, plus side and ground side
      when: [load of 5 A]
      readings:
        plus: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
        ground: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - result: {plus: at most 0.5, ground: at most 0.2}
          branch: all-good
        - result: otherwise
          branch: repair

Right:

    feed:
      check: Voltage drop, plus side and ground side
      when: [load of 5 A]
      readings:
        plus: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
        ground: {unit: V, from: 0, to: 16, resolution: 0.01, origin: common practice}
      results:
        - result: {plus: at most 0.5, ground: at most 0.2}
          branch: all-good
        - result: {plus: above 0.5}
          branch: repair
        - result: {plus: at most 0.5, ground: above 0.2}
          branch: repair

Fix: Write out what `otherwise` hides, each with its own branch, even where two lead to one step.
"""

from collections.abc import Iterator

from builder.graph.coverage import uncovered
from builder.graph.space import Space
from builder.model.finding import Finding, Severity
from builder.model.ranges import Box
from builder.model.tree import Check, Result
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.witnesses import example_reading

RULE = Rule(
    name="hidden-bands",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="An `otherwise` that hides combinations of readings.",
)
MAX_BANDS = 5


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every `otherwise`, with what it hides."""
    for step in facts.steps:
        space = facts.spaces.get(step.id)
        if space and isinstance(step.body, Check):
            for result in step.body.results:
                if result.otherwise:
                    yield _hidden(space, result)


def _hidden(space: Space, result: Result) -> Finding:
    pieces = uncovered(space.domain, space.boxes) or []
    bands = [_in_words(space, one) for one in sorted(pieces) if example_reading(space, one)]
    shown = "; ".join(bands[:MAX_BANDS])
    more = f"; and {len(bands) - MAX_BANDS} more" if len(bands) > MAX_BANDS else ""
    message = f"`otherwise` hides: {shown}{more}" if bands else "`otherwise` is left with nothing"
    hint = "write each of them out with its branch" if bands else "delete it"
    why = "a combination nobody thought of goes the way of the rest unseen"
    return RULE.finding(result.said.at, message, why, hint)


def _in_words(space: Space, piece: Box) -> str:
    """Write a piece by those of its sides that are not the whole reading."""
    words = (
        f"{axis.name} {axis.side_as_text(side)}"
        for axis, side in zip(space.axes, piece, strict=True)
        if side != axis.domain
    )
    return ", ".join(words) or "every reading"
