"""A range open on one side that takes in zero although the reading can be negative: `at most 10`
of a reading from -30 takes -30 too.

Why: With the leads the wrong way round, or the current flowing backwards, the reading is negative
and passes for good.

Wrong:

    charge:
      check: Current into the battery
      when: [engine at 1500 rpm]
      reading: {unit: A, from: -100, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: at most 10, branch: all-good}
        - {result: above 10, branch: repair}

Right:

    charge:
      check: Current into the battery
      when: [engine at 1500 rpm]
      reading: {unit: A, from: -100, to: 100, resolution: 0.1, origin: common practice}
      results:
        - {result: below 0, branch: repair}
        - {result: 0 to 10, branch: all-good}
        - {result: above 10, branch: repair}

Fix: Say both ends: `0 to 10` and a result for what lies below zero, or `-100 to 10` if the
negative readings are meant.
"""

from collections.abc import Iterator
from decimal import Decimal

from builder.graph.space import Axis, range_as_text
from builder.model.finding import Finding, Severity
from builder.model.ranges import BOTTOM, EVERYTHING, TOP, Range
from builder.model.tree import Result
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="open-over-zero",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A range open on one side that takes in zero, of a reading that can be negative.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every open range that runs on over zero."""
    for space in facts.spaces.values():
        for axis in space.axes:
            if axis.domain.low.value < 0 and not axis.phrases and axis.domain != EVERYTHING:
                for result in space.results:
                    if axis.name in result.ranges:
                        yield from _open(axis, result, result.ranges[axis.name])


def _open(axis: Axis, result: Result, said: Range) -> Iterator[Finding]:
    one_sided = (said.low == BOTTOM) != (said.high == TOP)
    end_at_zero = 0 in (said.low.value, said.high.value)
    if one_sided and said.takes(Decimal(0)) and not end_at_zero:
        both = range_as_text(said.meets(axis.domain))
        end = axis.value_as_text(
            axis.domain.low.value if said.low == BOTTOM else axis.domain.high.value
        )
        yield RULE.finding(
            result.said.at,
            f"`{result.said}` runs on over zero to {end}",
            "with the leads the wrong way round the reading is negative and passes for this",
            f"say both ends: `{both}` if that is meant, or stop at zero and add a result",
        )
