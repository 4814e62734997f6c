"""A fix that is entered by the very answer that is to prove afterward that it worked.

Two branches of the check are swapped, or the verification names the wrong result. Where another
result ends the diagnosis too, nothing is said: the good answer may leave just one thing to repair.

Why: A good part gets replaced, the check passes as it did before, and the fault drives off.

Wrong:

    drive: with care
    why: It may stall.
    steps:
      cable:
        check: Is the cable tight and clean?
        results: {yes: cable-fix, no: ground}
      ground:
        check: Is the ground good?
        results: {yes: all-good, no: repair}
      cable-fix:
        fix: Replace the cable
        cause: The cable is bad
        weight: 1
        verify: [{cable: yes}]

Right:

    drive: with care
    why: It may stall.
    steps:
      cable:
        check: Is the cable tight and clean?
        results: {yes: ground, no: cable-fix}
      ground:
        check: Is the ground good?
        results: {yes: all-good, no: repair}
      cable-fix:
        fix: Replace the cable
        cause: The cable is bad
        weight: 1
        verify: [{cable: yes}]

Fix: Lead the bad result to the fix, and the good one on; or verify with what a repaired vehicle
answers.
"""

from collections.abc import Iterator

from builder.model.checks import Check, Result
from builder.model.ends import Ending, Fix, Verification
from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="already-passing",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A fix entered by the answer that is to prove it worked.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result that leads to a fix and passes in its verification."""
    for step in facts.steps:
        for result in step.body.results if isinstance(step.body, Check) else ():
            end = _entered(facts, result)
            if (
                end is None
                or not isinstance(end.body, Fix)
                or not _others_go_on(facts, step, result)
            ):
                continue
            for one in end.body.verify:
                if one.text == step.id and _passes(one, result):
                    yield _finding(step, result, end, one)


def _entered(facts: Facts, result: Result) -> Step | None:
    branch = result.branch
    return None if branch.leaves else facts.tree.steps.get(str(branch.step))


def _others_go_on(facts: Facts, step: Step, passing: Result) -> bool:
    """Whether every other result of the check leads on to a check, an action or another tree."""
    assert isinstance(step.body, Check)
    others = [one for one in step.body.results if one is not passing]
    ends = [_entered(facts, one) for one in others]
    return bool(others) and not any(end and isinstance(end.body, Ending) for end in ends)


def _finding(step: Step, result: Result, end: Step, one: Verification) -> Finding:
    assert isinstance(step.body, Check)
    return RULE.finding(
        result.branch.text.at,
        f"`{step.id}: {result.text}` leads to `{end.id}`, and is to prove afterward that the "
        "repair worked",
        "a good part gets replaced, and the check passes as it did before",
        _hint(step.body, result),
        Related(one.text.at, f"`{end.id}` passes at `{result.text}`"),
    )


def _passes(one: Verification, result: Result) -> bool:
    """Whether a verification passes at a result; a check with specs passes within all of them."""
    if one.passes:
        return result.text in one.passes
    if one.readings:
        return all(result.compares.get(name) == words for name, words in one.readings.items())
    return bool(result.compares) and {*result.compares.values()} == {"within spec"}


def _hint(check_: Check, passing: Result) -> str:
    others = [one for one in check_.results if one is not passing and one.branch.step]
    if len(check_.results) == 2 and others:
        right = (
            f"`{passing.text}: {others[0].branch.text}, {others[0].text}: {passing.branch.text}`"
        )
        return f"the two branches look swapped: write {right}; or correct `verify`"
    return f"lead `{passing.text}` to another step, or correct the result in `verify`"
