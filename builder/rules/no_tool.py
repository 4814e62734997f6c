"""A check that takes a reading and names no tool, in a tree that names one at other readings.

Why: The walk and the sheets list what to bring to the vehicle, and the check compares each limit
with what the tool can show.

Wrong:

    resting:
      check: Measure voltage across the posts
      when: [key-off]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      tools: [multimeter]
      results: {below 12.4: repair, at least 12.4: loaded}
    loaded:
      check: Measure voltage with the lights on
      when: [key-off]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      results: {below 11.8: repair, at least 11.8: all-good}

Right:

    resting:
      check: Measure voltage across the posts
      when: [key-off]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      tools: [multimeter]
      results: {below 12.4: repair, at least 12.4: loaded}
    loaded:
      check: Measure voltage with the lights on
      when: [key-off]
      reading: {unit: V, from: 0, to: 20, resolution: 0.01, origin: common practice}
      tools: [multimeter]
      results: {below 11.8: repair, at least 11.8: all-good}

Fix: Name the tool under `tools`. Where a document or the customer tells the figure, write
`told: yes`.
"""

from collections.abc import Iterator

from builder.model.checks import Reading
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.limits import measuring_checks
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.units import same_kind

RULE = Rule(
    name="no-tool",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A check that takes a reading and names no tool, as others do.",
)
SHARE = "%"  # is computed as often as read


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every check without a tool that reads what a tool of the shop reads."""
    measuring = list(measuring_checks(facts))
    if not any(step.tools for step, _ in measuring):
        return  # a tree that leaves all tools to the tech
    for step, body in measuring:
        if step.tools or step.same_as or body.told or body.by:
            continue
        for reading in body.readings:
            tools = _reading_it(facts, reading)
            if tools:
                yield _finding(step, reading, tools)
                break


def _reading_it(facts: Facts, reading: Reading) -> list[str]:
    if reading.one_of or reading.unit == SHARE:
        return []
    return [
        name
        for name, tool in facts.library.tools.items()
        if any(same_kind(one.unit, reading.unit) for one in tool.reads)
    ]


def _finding(step: Step, reading: Reading, tools: list[str]) -> Finding:
    likely = " or ".join(f"`tools: [{name}]`" for name in tools[:3])
    return RULE.finding(
        step.text.at,
        f"`{step.id}` reads `{reading.unit}`, and no tool is named",
        "the tech comes without it, and the limit can't be checked against it",
        f"write {likely}; or `told: yes`, if the figure is looked up",
    )
