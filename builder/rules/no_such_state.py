"""A state in `when` or `hook_up`, or in a module's record, that isn't in `kb/conditions.yml`.

Why: The walk can't tell anyone to get the vehicle into it.

Wrong:

    steps:
      charging:
        check: Measure voltage at the battery posts
        when: [engine-runing]
        reading: {unit: V, from: 0, to: 20, resolution: 0.1, origin: common practice}
        results:
          - {result: below 13.2, branch: repair}
          - {result: at least 13.2, branch: all-good}

Right:

    steps:
      charging:
        check: Measure voltage at the battery posts
        when: [engine-running]
        reading: {unit: V, from: 0, to: 20, resolution: 0.1, origin: common practice}
        results:
          - {result: below 13.2, branch: repair}
          - {result: at least 13.2, branch: all-good}

Fix: Write the state as it stands in `kb/conditions.yml`, or add it there. A condition in free text
has a blank in it: `10 min at idle`.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.conditions import Conditions
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.close_names import slip_edit
from builder.rules.shared.close_states import offer_of, states_meant
from builder.rules.shared.named_needs import needs_of_modules, needs_of_steps
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-such-state",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A state of the vehicle that doesn't exist.",
)
WHY = "the walk can't tell anyone to get the vehicle into it"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every state of a step that doesn't exist."""
    conditions = facts.library.conditions
    for named in needs_of_steps(facts):
        for need in named.needs:
            yield from _unknown(need.condition, conditions)
    for step in facts.steps:
        if step.hook_up:
            yield from _unknown(step.hook_up, conditions)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every state of a module's record that doesn't exist."""
    for named in needs_of_modules(library):
        for need in named.needs:
            yield from _unknown(need.condition, library.conditions)


def _unknown(name: Text, conditions: Conditions) -> Iterator[Finding]:
    if name not in conditions:
        otherwise = "add it to kb/conditions.yml, or write it in words with a blank"
        meant = states_meant(name, conditions)
        yield RULE.finding(name.at, f"state `{name}` doesn't exist", WHY,
                           offer_of(meant, otherwise), edit=slip_edit(name, meant))  # fmt: skip
