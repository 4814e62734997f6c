"""A fix whose proof passed before the repair already.

It is entered by the very answer that is to prove afterward that it worked: two branches are
swapped, or `verify` names the wrong result. Where another result ends the diagnosis too, nothing is
said: the good answer may leave just one thing to repair. Or `verify` names an answer that is no
good one, and that leads here, or a reading out of spec. Or it sells a part, and all that `verify`
names was so on every path to it.

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

from builder.graph.evidence import arrivals, convicting_checks
from builder.model.checks import Check, Result
from builder.model.ends import Ending, Fix, Verification
from builder.model.finding import Finding, Related, Severity
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.passing import good_result, passing_results
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="already-passing",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A fix whose proof passed before the repair already.",
)
WHY = "a good part gets replaced, and the check passes as it did before"
OUTSIDE = ("below spec", "above spec")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every fix that may be proved by what was so before it."""
    for step in facts.steps:
        if isinstance(step.body, Fix):
            first = next(_of_fix(facts, step, step.body), None)
            if first:
                yield first


def _of_fix(facts: Facts, fix: Step, body: Fix) -> Iterator[Finding]:
    for one in body.verify:
        yield from _bad_answer(facts, fix, one)
    for one in body.verify:
        yield from _entered_by(facts, fix, one)
    sells = bool(body.parts or body.replaces)  # else the check itself may have been the repair
    if sells and body.verify and facts.whole and all(_was_so(facts, fix, v) for v in body.verify):
        yield _nothing_new(facts, fix, body.verify[0])


def _bad_answer(facts: Facts, fix: Step, one: Verification) -> Iterator[Finding]:
    """Yield a finding where a result that is known to be bad leads here, and is to pass here."""
    step = facts.tree.steps.get(one.text)
    good = good_result(facts, step) if step else None
    if step is None or good is None or not facts.whole or good in one.passes:
        return
    passing = [str(result.text) for result in passing_results(facts, one)]
    outside = next((text for text in passing if text in OUTSIDE), None)
    if outside:
        yield RULE.finding(
            one.text.at,
            f"`{one.text}: {outside}` is to prove that the repair worked",
            "the vehicle leaves with the fault that it came with",
            f"write the reading of a repaired vehicle: `{{{one.text}: {good}}}`",
        )
        return
    led = (way.left_by.result for way in arrivals(facts.graph, one.text, fix.id) if way.left_by)
    result = next((result for result in led if result and result.text in passing), None)
    if result and result.text != good:
        yield RULE.finding(
            one.text.at,
            f"`{one.text}: {result.text}` leads to `{fix.id}`, and is to prove afterward that the "
            "repair worked",
            "the vehicle leaves with the fault that it came with",
            f"write the reading of a repaired vehicle: `{{{one.text}: {good}}}`",
            Related(result.text.at, "the result that leads there"),
        )


def _entered_by(facts: Facts, fix: Step, one: Verification) -> Iterator[Finding]:
    """Yield a finding where a result leads straight to the fix, the others on, and it passes."""
    step = facts.tree.steps.get(one.text)
    if step is None:
        return
    for result in passing_results(facts, one):
        if _entered(facts, result) is fix and _others_go_on(facts, step, result):
            yield RULE.finding(
                result.branch.text.at,
                f"`{step.id}: {result.text}` leads to `{fix.id}`, and is to prove afterward that "
                "the repair worked",
                WHY,
                _swapped(facts, step, result),
                Related(one.text.at, f"`{fix.id}` passes at `{result.text}`"),
            )


def _entered(facts: Facts, result: Result) -> Step | None:
    branch = result.branch
    return None if branch.leaves else facts.tree.steps.get(str(branch.step))


def _others_go_on(facts: Facts, step: Step, passing: Result) -> bool:
    """Whether every other result of the check leads on to a check, an action or another tree."""
    assert isinstance(step.body, Check)
    others = [one for one in step.body.results if one is not passing]
    ends = [_entered(facts, one) for one in others]
    return bool(others) and not any(end and isinstance(end.body, Ending) for end in ends)


def _swapped(facts: Facts, step: Step, passing: Result) -> str:
    """Say how to turn the branches around, or else `verify`: which is wrong is the author's."""
    assert isinstance(step.body, Check)
    others = [one for one in step.body.results if one is not passing and one.branch.step]
    if len(step.body.results) > 2 or not others:
        return f"lead `{passing.text}` to another step, or correct the result in `verify`"
    right = f"`{passing.text}: {others[0].branch.text}, {others[0].text}: {passing.branch.text}`"
    if good_result(facts, step) == passing.text:
        return f"the two branches look swapped: write {right}; or correct `verify`"
    return (
        f"if `{passing.text}` is the good answer, the two branches are swapped: write {right}; "
        f"if it's the bad one, write `{{{step.id}: {others[0].text}}}` in `verify`"
    )


def _was_so(facts: Facts, fix: Step, one: Verification) -> bool:
    """Whether a check was last left by a passing result on every path to a fix."""
    passing = {str(result.text) for result in passing_results(facts, one)}
    ways = arrivals(facts.graph, one.text, fix.id) if passing else ()
    return bool(ways) and all(
        way.left_by and way.left_by.result and way.left_by.result.text in passing for way in ways
    )


def _nothing_new(facts: Facts, fix: Step, one: Verification) -> Finding:
    passed: Text = next(iter(passing_results(facts, one))).text
    sources = sorted(convicting_checks(facts.tree, facts.graph, fix.id) - {str(one.text)})
    named = " or ".join(f"`{name}`" for name in sources)
    return RULE.finding(
        one.text.at,
        f"`{one.text}: {passed}` is so on every path to `{fix.id}`, before the repair already",
        "a test that passed before proves nothing, and the fault may drive off",
        f"prove it with what found the fault: {named}"
        if named
        else "add a test that failed before the repair, or a sentence such as `no noise at idle`",
    )
