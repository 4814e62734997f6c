"""A step that differs from its twin in the same tree: the same question leads to the same repair by
another answer, or its lines are done without the `hook_up` that all steps like it have.

Why: By one of two swapped answers a good part gets replaced. Without `hook_up` the power is on
while the test is hooked up.

Wrong:

    sinks:
      check: Does it still sink?
      results: {yes: belt-fix, no: bled}
    bled:
      check: Does it still sink?
      results: {yes: all-good, no: belt-fix}
    belt-fix:
      fix: Replace the belt
      cause: The belt is worn
      weight: 1
      verify: [the check passes]

Right:

    sinks:
      check: Does it still sink?
      results: {yes: belt-fix, no: bled}
    bled:
      check: Does it still sink?
      results: {yes: belt-fix, no: all-good}
    belt-fix:
      fix: Replace the belt
      cause: The belt is worn
      weight: 1
      verify: [the check passes]

Fix: Write it as the twin has it. Where both are right, ask in other words what is different here.
"""

from collections import defaultdict
from collections.abc import Iterator
from itertools import combinations

from builder.model.checks import Check, Result
from builder.model.ends import Fix
from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unlike-its-twin",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A step that differs from the same test in its tree.",
)
FEW = 2  # twins that have it


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that differs from a twin in its own tree."""
    same_test: dict[object, list[Step]] = defaultdict(list)
    same_work: dict[object, list[Step]] = defaultdict(list)
    for step in facts.steps:
        states = frozenset((str(need.condition), str(need.value)) for need in step.needs)
        if isinstance(step.body, Check):
            same_test[(str(step.text), tuple(map(str, step.do)), states)].append(step)
        if states and step.hazards and not isinstance(step.body, Fix):
            same_work[(states, frozenset(map(str, step.hazards)))].append(step)
    for steps in same_test.values():
        for one, other in combinations(steps, 2):
            yield from _swapped(facts, one, other)
    for steps in same_work.values():
        yield from _not_hooked_up(steps)


def _swapped(facts: Facts, one: Step, other: Step) -> Iterator[Finding]:
    """Yield where one answer leads to a fix, and to the same fix another answer of the twin."""
    first, second = _answers(one), _answers(other)
    for answer, result in second.items():
        target = result.branch.text
        leading = [name for name, found in first.items() if found.branch.text == target]
        known = len(leading) == 1 and leading[0] != answer and {answer, *leading} <= {*first}
        if known and _is_fix(facts, result) and _only(second, answer) and leading[0] in second:
            yield RULE.finding(
                target.at,
                f"`{answer}` leads to `{target}` here, and `{leading[0]}` at `{one.id}`, which "
                "asks the same",
                "by one of the two a good part gets replaced, and the bad one stays",
                f"lead `{leading[0]}` to `{target}` here, or correct `{one.id}`",
                _like(one),
            )


def _answers(step: Step) -> dict[str, Result]:
    return {str(one.text): one for one in step.body.results} if isinstance(step.body, Check) else {}


def _only(answers: dict[str, Result], answer: str) -> bool:
    target = answers[answer].branch.text
    return sum(one.branch.text == target for one in answers.values()) == 1


def _is_fix(facts: Facts, result: Result) -> bool:
    step = None if result.branch.leaves else facts.tree.steps.get(str(result.branch.step))
    return step is not None and isinstance(step.body, Fix)


def _not_hooked_up(steps: list[Step]) -> Iterator[Finding]:
    """Yield where only one step with lines to do, in the same states, has no `hook_up`."""
    steps = [step for step in steps if step.do]
    lacking = [step for step in steps if not step.hook_up]
    states = {str(step.hook_up) for step in steps if step.hook_up}
    if len(lacking) == 1 and len(steps) > FEW and len(states) == 1:
        step, other = lacking[0], next(one for one in steps if one.hook_up)
        yield RULE.finding(
            step.text.at,
            f"`{step.id}` has no `hook_up`, which the other {len(steps) - 1} steps with the same "
            "`when` and `hazards` have",
            "its lines would be done in the state of the test, with the power on",
            f"write `hook_up: {other.hook_up}`",
            _like(other),
        )


def _like(step: Step) -> Related:
    return Related(step.text.at, f"`{step.id}`, its twin")
