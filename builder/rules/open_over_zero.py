"""A range with one open end that includes zero although the reading can be negative: `at most 10`
of a reading from -30 also covers -30.

Why: With the leads reversed, or the current flowing backward, the reading is negative and passes as
good.

Wrong:

    charge:
      check: Measure current into the battery
      when: [engine at 1500 rpm]
      reading: {unit: A, from: -100, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 10, branch: all-good}
        - {result: above 10, branch: repair}

Right:

    charge:
      check: Measure current into the battery
      when: [engine at 1500 rpm]
      reading: {unit: A, from: -100, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: below 0, branch: repair}
        - {result: 0 to 10, branch: all-good}
        - {result: above 10, branch: repair}

Fix: Write both ends: `0 to 10` and a result for what is below zero, or `-100 to 10` if you mean the
negative readings.
"""

from collections.abc import Iterator
from decimal import Decimal

from builder.graph.space import Axis, range_as_text
from builder.model.checks import Result
from builder.model.finding import Finding, Severity
from builder.model.ranges import BOTTOM, EVERYTHING, TOP, Range
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="open-over-zero",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A range with one open end that includes zero, of a reading that can be negative.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every open range that runs past zero."""
    for space in facts.spaces.values():
        for axis in space.axes:
            if axis.domain.low.value < 0 and not axis.phrases and axis.domain != EVERYTHING:
                for result in space.results:
                    if axis.name in result.ranges:
                        yield from _open(axis, result, result.ranges[axis.name])


def _open(axis: Axis, result: Result, side: Range) -> Iterator[Finding]:
    one_sided = (side.low == BOTTOM) != (side.high == TOP)
    end_at_zero = 0 in (side.low.value, side.high.value)
    if one_sided and side.contains(Decimal(0)) and not end_at_zero:
        both_ends = range_as_text(side.intersection(axis.domain))
        open_end = axis.domain.low if side.low == BOTTOM else axis.domain.high
        yield RULE.finding(
            result.text.at,
            f"`{result.text}` runs past zero to {axis.value_as_text(open_end.value)}",
            "with the leads reversed the reading is negative and passes as this result",
            f"write both ends: `{both_ends}` if you mean it, or stop at zero and add a result",
        )
