"""A condition in free text that means a state of `kb/conditions.yml`, or is a slip away from one.

Why: Free text is only shown. The walk doesn't change the state for it, and shows none of its
cautions.

Wrong:

    steps:
      charging:
        check: Measure voltage at the battery posts
        when: [engine runing]
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

Fix: Write the state's name. What the state doesn't say stays in words beside it: `1500 rpm`.
"""

from collections.abc import Iterator

from builder.model.conditions import Takes
from builder.model.finding import Finding, Severity
from builder.rules.shared.close_states import offer_of, states_meant
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="state-in-words",
    family=Family.STATES,
    severity=Severity.WARNING,
    summary="A condition in free text that means a state.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every condition in free text that is close to a state."""
    for step in facts.steps:
        for words in step.when:
            meant = states_meant(words, facts.library.conditions)
            if meant:
                yield RULE.finding(
                    words.at,
                    f"`{words}` is free text, not a state",
                    "the walk doesn't change the state for it, and shows none of its cautions",
                    offer_of([_written(facts, name) for name in meant], ""),
                )


def _written(facts: Facts, name: str) -> str:
    """Return a state as it is written, with what it takes."""
    takes = facts.library.conditions[name].takes
    return f"{{{name}: {'the part' if takes is Takes.PART else '9 A'}}}" if takes else name
