"""A condition in free text that means a state of `kb/conditions.yml`, or is a slip away from one;
a test in `verify` that names a state in its words.

Why: Free text is only shown. The walk doesn't change the state for it, and shows none of its
cautions. A test in words is asked for with everything back to normal.

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

Fix: Write the state's name. What the state doesn't say stays in words beside it: `1500 rpm`. A
test after a repair that needs a state is a check with `when`; `verify` names it with its result.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.conditions import POWER, Takes
from builder.model.ends import Fix, Verification
from builder.model.finding import Finding, Severity, edit_of
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.close_states import offer_of, power_states, state_named, states_meant
from builder.rules.shared.opposites import words_of_name
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="state-in-words",
    family=Family.STATES,
    severity=Severity.WARNING,
    summary="A condition in free text that means a state.",
)
UNPLUGGED, PLUGGED = "unplugged", "plugged-in"
WHY = "the walk doesn't change the state for it, and shows none of its cautions"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every condition in free text that is close to a state."""
    yield from _in_tests(facts)
    for step in facts.steps:
        yield from _other_way_around(step)
        yield from _spec_of_another_state(facts, step)
        for words in step.when:
            meant = states_meant(words, facts.library.conditions)
            if right := _state_with_words(facts, words):
                yield RULE.finding(words.at, f"`{words}` is read as free text", WHY,
                                   f"write `{right}`", edit=edit_of(words, right))  # fmt: skip
            elif meant:
                yield RULE.finding(
                    words.at,
                    f"`{words}` is free text, not a state",
                    WHY,
                    offer_of([_written(facts, name) for name in meant], ""),
                )


def _other_way_around(step: Step) -> Iterator[Finding]:
    """Yield a finding where a check asks with something unplugged, and `when` has it plugged in."""
    named = {str(need.condition): need for need in step.needs}
    if not isinstance(step.body, Check):
        return
    for said, state, other in (
        ("unplugged", UNPLUGGED, PLUGGED),
        ("plugged in", PLUGGED, UNPLUGGED),
    ):
        if re.search(rf"\b{said}\b", step.text) and other in named and state not in named:
            need = named[other]
            yield RULE.finding(
                need.condition.at,
                f"`{step.text}` asks with it {said}, and `when` has `{{{other}: {need.value}}}`",
                "the reading is taken the other way around, and means nothing",
                f"write `{{{state}: {need.value}}}`",
            )


def _spec_of_another_state(facts: Facts, step: Step) -> Iterator[Finding]:
    """Yield a finding for a spec whose words name a power state that the step isn't in."""
    body, conditions = step.body, facts.library.conditions
    named = [str(need.condition) for need in step.needs]
    power = next((one for one in named if one in conditions and conditions[one].group == POWER), "")
    for reading in body.readings if isinstance(body, Check) and power else ():
        spec = facts.library.specs.get(str(reading.spec))
        said = words_of_name(spec.text) if spec else frozenset()
        other = next((one for one in conditions if one in said and one not in named), None)
        if spec and reading.spec and other and conditions[other].group == POWER:
            yield RULE.finding(
                reading.spec.at,
                f"`{spec.id}` is `{spec.text}`, and `{step.id}` is in `{power}`",
                "the limit is for another state, so good and bad change places",
                f"write the spec for `{power}`, or `{other}` in `when`",
            )


def _in_tests(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every test in words that only makes sense in a state."""
    fixes = [step.body for step in facts.steps if isinstance(step.body, Fix)]
    tests = [test for fix in fixes for test in fix.verify if _is_in_words(test)]
    powers = power_states(facts.library.conditions) if tests else {}
    for test in tests:
        if name := state_named(test.text, powers):
            yield RULE.finding(
                test.text.at, f"`{test.text}` needs `{name}`, and a test in words has no state",
                "the walk asks for it with everything back to normal, so nobody is told to do that",
                f"write a check with `when: [{_written(facts, name)}]`, and name it here: "
                "`{step: result}`",
            )  # fmt: skip


def _is_in_words(test: Verification) -> bool:
    return not (test.is_named or test.passes or test.readings)


def _state_with_words(facts: Facts, words: Text) -> str | None:
    """Return `unplugged alternator` as a state with its part, and `key-on and hot` as two items."""
    name, _, rest = words.partition(" ")
    state = facts.library.conditions.get(name) if "-" in name or rest else None
    if state and state.takes:
        return f"{{{name}: {rest}}}"
    rest = re.sub(r"^(?:and|with|,) ", "", rest)
    return f"{name.rstrip(',')}, {rest}" if state and "-" in name else None


def _written(facts: Facts, name: str) -> str:
    """Return a state as it is written, with what it takes."""
    takes = facts.library.conditions[name].takes
    return f"{{{name}: {'the part' if takes is Takes.PART else '9 A'}}}" if takes else name
