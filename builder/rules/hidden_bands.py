"""An `otherwise` over several readings: it covers every combination that the author didn't think
of.

Why: A combination that needs an answer of its own gets the answer of the rest, and nobody notices.

Wrong:

    feed:
      check: Measure voltage drop on both sides
      when: [loads-on]
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
      check: Measure voltage drop on both sides
      when: [loads-on]
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

Fix: Write out what `otherwise` hides, each with its own branch, even where two lead to the same
step.
"""

from collections.abc import Iterator

from builder.graph.reading_coverage import uncovered
from builder.graph.space import Space
from builder.model.checks import Check, Result
from builder.model.finding import Finding, Severity
from builder.model.ranges import Box
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
    bands = [_as_text(space, piece) for piece in sorted(pieces) if example_reading(space, piece)]
    listed = "; ".join(bands[:MAX_BANDS])
    more = f"; and {len(bands) - MAX_BANDS} more" if len(bands) > MAX_BANDS else ""
    message = f"`otherwise` hides: {listed}{more}" if bands else "`otherwise` covers nothing"
    hint = "write each one out with its branch" if bands else "delete it"
    why = "a combination that needs its own answer gets the answer of the rest"
    return RULE.finding(result.text.at, message, why, hint)


def _as_text(space: Space, piece: Box) -> str:
    """Write a piece by those of its sides that are not the whole reading."""
    sides = (
        f"{axis.name} {axis.side_as_text(side)}"
        for axis, side in zip(space.axes, piece, strict=True)
        if side != axis.domain
    )
    return ", ".join(sides) or "every reading"
