"""A reading that a text quotes and that wasn't taken on every path to its fix.

`tell` and `cause` may quote `<step>`, or `<step.reading>` where a step has several readings: of the
check that convicts on every path, or of one in `proved_by`. It is printed with its unit. Steps with
`each` or `by` have no one reading to quote.

Why: The customer's sheet would have a gap, or an older reading, where it quotes a measurement.

Wrong:

    volts:
      check: Measure charging voltage at the battery posts
      when: [engine at idle]
      reading: {unit: V, from: 0, to: 20, origin: common practice}
      results: {below 13.2: belt, at least 13.2: all-good}
    belt:
      check: Is the belt tight?
      results: {yes: all-good, no: slipping}
    slipping:
      fix: Replace the belt
      cause: The alternator made only <volts>
      weight: 1
      verify: [belt tight]

Right:

    volts:
      check: Measure charging voltage at the battery posts
      when: [engine at idle]
      reading: {unit: V, from: 0, to: 20, origin: common practice}
      results: {below 13.2: belt, at least 13.2: all-good}
    belt:
      check: Is the belt tight?
      results: {yes: all-good, no: slipping}
    slipping:
      fix: Replace the belt
      cause: The alternator made only <volts>
      weight: 1
      proved_by: [{volts: below 13.2}]
      verify: [belt tight]

Fix: Add the check to `proved_by`, or say it without the reading.
"""

import re
from collections.abc import Iterator

from builder.graph.evidence import arrivals, convicting_checks
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="quoted-reading",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A text quotes a reading that wasn't taken on every path.",
)
WHY = "the customer's sheet would have a gap where it quotes a measurement"
QUOTED = re.compile(r"<([A-Za-z0-9_-]+)(?:\.([A-Za-z0-9_-]+))?>")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every quoted reading that isn't evidence for its fix."""
    asked = {str(question.name) for question in facts.tree.asks}
    asked |= {str(step.each[0]) for step in facts.tree.steps.values() if step.each}
    for step in facts.steps:
        if not isinstance(step.body, Fix):
            continue
        for text in filter(None, (step.body.cause, step.body.tell)):
            for match in QUOTED.finditer(text):
                is_html = f"</{match[1]}>" in text
                if not is_html and match[1] not in asked | facts.tree.broken:
                    yield from _of_quote(facts, step, text, match)


def _of_quote(facts: Facts, fix: Step, text: Text, match: re.Match[str]) -> Iterator[Finding]:
    assert isinstance(fix.body, Fix)
    source = facts.tree.steps.get(match[1])
    if source is None or not isinstance(source.body, Check):
        checks = [n for n, step in facts.tree.steps.items() if isinstance(step.body, Check)]
        hint = suggestion(match[1], checks, "quote a check of this tree")
        yield RULE.finding(text.at, f"`{match[0]}` names no check and no question", WHY, hint)
    elif problem := _unquotable(source, source.body, match[2]):
        yield RULE.finding(text.at, f"`{match[0]}`: {problem}", WHY,
                           "quote another check, or say it without the reading")  # fmt: skip
    elif unit := _unit_behind(facts, source.body, text[match.end() :], match[2] or ""):
        yield RULE.finding(text.at, f"`{match[0]} {unit}` would say the unit twice",
                           "a reading is printed with its unit, and the customer reads both",
                           f"write just `{match[0]}`")  # fmt: skip
    elif facts.whole and source.id not in {str(proof.step) for proof in fix.body.proved_by}:
        convicting = convicting_checks(facts.tree, facts.graph, fix.id)
        if convicting != {source.id}:
            yield _unproved(facts, fix, text, source.id)


def _unproved(facts: Facts, fix: Step, text: Text, quoted: str) -> Finding:
    """Return the finding for a reading that isn't, or may not be, there at the fix."""
    message = f"`<{quoted}>` isn't measured on every path to `{fix.id}`"
    if all(one.left_by for one in arrivals(facts.graph, quoted, fix.id)):
        hint = f"add `{quoted}` and its result to `proved_by`: the sheet quotes only what is there"
        return RULE.finding(text.at, message, WHY, hint)
    names = [*convicting_checks(facts.tree, facts.graph, fix.id)]
    names += [str(proof.step) for proof in fix.body.proved_by] if isinstance(fix.body, Fix) else []
    steps = (facts.tree.steps.get(name) for name in dict.fromkeys(names))
    there = [one for one in steps if one and isinstance(one.body, Check)
             and not _unquotable(one, one.body, None)]  # fmt: skip
    listed = " or ".join(f"`<{one.id}>`" for one in there)
    return RULE.finding(text.at, message, WHY, f"quote one that is: {listed}" if listed else
                        "say it without the reading")  # fmt: skip


def _unit_behind(facts: Facts, check_: Check, rest: str, name: str) -> str:
    """Return the unit of a reading, where a text has it right behind the reading."""
    reading = next((one for one in check_.readings if one.name == name), None)
    spec = facts.library.specs.get(str(reading.spec)) if reading and reading.spec else None
    unit = str(spec.unit if spec else reading.unit) if reading else ""
    words = rest.split(maxsplit=1)
    has_unit = bool(unit) and unit != "in" and rest[:1] == " " and words
    return unit if has_unit and words[0].rstrip(".,;") == unit else ""


def _unquotable(source: Step, body: Check, reading: str | None) -> str:
    names = [reading.name for reading in body.readings]
    names += [str(computed.name) for computed in body.computed]
    if source.each or body.by:
        return f"a step with `{'each' if source.each else 'by'}` has no one reading"
    if not names:
        return f"`{source.id}` measures nothing"
    if reading is None and names != [""]:
        return f"`{source.id}` has several readings: name one, such as `<{source.id}.{names[0]}>`"
    if reading is not None and reading not in names:
        return f"`{source.id}` has no reading `{reading}`"
    return ""
