"""A state without the part or the current that it takes, or with one that it doesn't take.

Why: The tech can't tell which connector to unplug, or where the load goes.

Wrong:

    steps:
      light:
        check: Is the charging lamp on with the connector off?
        when: [key-on, unplugged]
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Right:

    steps:
      light:
        check: Is the charging lamp on with the connector off?
        when: [key-on, {unplugged: alternator}]
        results:
          - {result: yes, branch: repair}
          - {result: no, branch: all-good}

Fix: Write the part or the current behind the state. A load is at the part that the step names in
`at`: `at: {part: alternator, pins: [sense]}`.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.needed_states import part_at
from builder.graph.sound_conditions import conditions_for
from builder.model.conditions import Condition, Conditions, Takes
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.tree import Need
from builder.rules.shared.named_needs import (
    NamedNeeds,
    needs_of_modules,
    needs_of_steps,
)
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="state-value",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A state without what it takes, or with what it doesn't take.",
)
EXAMPLES = {Takes.PART: "alternator", Takes.CURRENT: "9 A"}
FROM = {Takes.PART: ", with a part of kb/parts.yml; add yours there", Takes.CURRENT: ""}


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every state of a step with a value too much or too little."""
    for named in needs_of_steps(facts):
        yield from _wrong(named, facts.conditions())


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every state of a module's record with a value too much or too little."""
    for named in needs_of_modules(library):
        yield from _wrong(named, conditions_for(library))


def _wrong(named: NamedNeeds, conditions: Conditions) -> Iterator[Finding]:
    for need in named.needs:
        one = conditions.get(need.condition)
        if one is None:
            continue
        if one.takes and need.value is None:
            yield _missing(need, one.takes)
        elif need.value is not None and not one.takes:
            yield RULE.finding(need.value.at, f"`{one.id}` takes nothing, `{need.value}` is unused",
                               "what you meant with it is never told",
                               f"write `{one.id}` alone")  # fmt: skip
        elif one.takes is Takes.CURRENT and not part_at(named.where):
            yield _nowhere(need, one)


def _missing(need: Need, takes: Takes) -> Finding:
    hint = f"write `{{{need.condition}: {EXAMPLES[takes]}}}`{FROM[takes]}"
    return RULE.finding(need.condition.at, f"`{need.condition}` takes a {takes}, and none is here",
                        f"the tech can't tell which {takes} it is", hint)  # fmt: skip


def _nowhere(need: Need, one: Condition) -> Finding:
    return RULE.finding(need.condition.at, f"`{one.id}: {need.value}` goes nowhere",
                        "the tech can't tell where to hook it up",
                        "add `at:` with the part: `at: {part: alternator}`")  # fmt: skip
