"""A check whose good answer leads to a repair while the bad one goes on.

It speaks only where the words say which answer is which: `Is the connector tight and dry?`, `Is a
hose split?`, `Are you trained for it?`. Of the words that a procedure returns, the first is the
good one: where it leads to a repair as a bad one does, no other bad one goes on.

Why: A good part gets replaced, and the bad one stays. Behind `Are you trained?`, it's the wrong
person who goes on.

Wrong:

    connector:
      check: Is the connector tight and dry?
      results: {yes: repair, no: wire}
    wire:
      check: Does the wire test good?
      results: {yes: all-good, no: repair}

Right:

    connector:
      check: Is the connector tight and dry?
      results: {yes: wire, no: repair}
    wire:
      check: Does the wire test good?
      results: {yes: all-good, no: repair}

Fix: Lead the bad answer to the repair, and the good one on. Where the answers are right, ask in
other words: say what is seen, and not if it's good.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check, Result
from builder.model.ends import Fix, Stop, StopKind
from builder.model.finding import Finding, Severity
from builder.model.tree import Action, Step
from builder.rules.shared.passing import good_result
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="swapped-answers",
    family=Family.EVIDENCE,
    severity=Severity.WARNING,
    summary="A good answer that leads to a repair while the bad one goes on.",
)
GOOD = re.compile(r"\b(?:good|intact|tight|clean|dry|latched|straight|undamaged|glued|secure)\b")
BAD = re.compile(
    r"\b(?:blocked|clogged|loose|split|cracked|kinked|crusted|bent|worn|damaged|broken|corroded"
    r"|rusted|seized|frayed|chafed|melted|torn|burned|leaking|dripping|wet|leaks?)\b"
)
# What was done before the question: then even a good answer tells what was wrong.
UNDER_A_CONDITION = re.compile(
    r"\b(?:after|once|with|without|when|while|still|not|never|again|now|if|unless|but|than|enough)\b"
    r"|\bto (?!the)|[?,] [a-z ]+ed\?$"
)
ABOUT_A_PART = re.compile(r"(?:is|are|does|do) (?!it\b|they\b|you\b)")
ABOUT_THE_TECH = re.compile(r"\b(?:you|tech|anyone here)\b.*\b(?:trained|certified|licensed)\b")


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every check whose answers lead the wrong way around."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            yield from _of_question(facts, step, step.body)
            yield from _of_procedure(facts, step, step.body)


def _of_question(facts: Facts, step: Step, body: Check) -> Iterator[Finding]:
    answers = {str(result.text): result for result in body.results}
    if {*answers} != {"yes", "no"}:
        return
    question = step.text.casefold()
    good = _good_answer(question)
    if ABOUT_THE_TECH.search(question):
        yield from _of_tech(facts, answers)
    elif good and _repairs(facts, answers[good]) and _goes_on(facts, answers[_other(good)]):
        bad = _other(good)
        yield RULE.finding(
            answers[good].branch.text.at,
            f"`{good}` is the good answer here, and leads to `{answers[good].branch.text}`",
            "a good part gets replaced, and the bad one goes on as if it were good",
            f"write `{good}: {answers[bad].branch.text}, {bad}: {answers[good].branch.text}`",
        )


def _good_answer(question: str) -> str | None:
    """Return the answer that a good vehicle gives, where the question's words leave no doubt."""
    if not ABOUT_A_PART.match(question) or UNDER_A_CONDITION.search(question):
        return None
    is_good, is_bad = bool(GOOD.search(question)), bool(BAD.search(question))
    return None if is_good == is_bad else "yes" if is_good else "no"


def _other(answer: str) -> str:
    return "no" if answer == "yes" else "yes"


def _of_tech(facts: Facts, answers: dict[str, Result]) -> Iterator[Finding]:
    on, ends = answers["no"].branch, answers["yes"].branch
    if _goes_on(facts, answers["no"]) and not _goes_on(facts, answers["yes"]):
        yield RULE.finding(
            on.text.at,
            f"`no` goes on to `{on.text}`, and `yes` ends at `{ends.text}`",
            "who isn't trained for it goes on, and who is gets stopped",
            f"write `yes: {on.text}, no: {ends.text}`",
        )


def _of_procedure(facts: Facts, step: Step, body: Check) -> Iterator[Finding]:
    """Yield a finding where the good word and a bad one share a repair, and another goes on."""
    good = good_result(facts, step) if body.by else None
    first = next((result for result in body.results if result.text == good), None)
    if first is None or not _repairs(facts, first):
        return
    others = [result for result in body.results if result is not first]
    on = [result for result in others if _goes_on(facts, result)]
    if on and any(result.branch.text == first.branch.text for result in others):
        yield RULE.finding(
            first.branch.text.at,
            f"`{good}` is the good result of `{body.by}`, and leads to `{first.branch.text}`, as a "
            "bad one does",
            "what was measured good gets repaired, and what is bad goes on",
            f"write `{good}: {on[0].branch.text}`, and lead `{on[0].text}` to its repair",
        )


def _target(facts: Facts, result: Result) -> Step | None:
    branch = result.branch
    return None if branch.leaves else facts.tree.steps.get(str(branch.step))


def _repairs(facts: Facts, result: Result) -> bool:
    """Whether a result leads straight to a fix, or to where nobody goes on."""
    step = _target(facts, result)
    body = step.body if step else None
    return isinstance(body, Fix) or (isinstance(body, Stop) and body.kind is StopKind.UNSAFE)


def _goes_on(facts: Facts, result: Result) -> bool:
    step = _target(facts, result)
    return step is not None and isinstance(step.body, (Check, Action))
