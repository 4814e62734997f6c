"""A line of a check takes something off the vehicle, and nothing says that it goes back on.

A state of the vehicle goes back to normal by itself; what is taken off in words needs `put_back`.
So does a gauge that is hooked up to a line. Other tools, cords and keys aren't meant, nor what
another step installs.

Why: The walk tells the tech to put back only what the tree names: the vehicle leaves without it.

Wrong:

    flow:
      check: Does coolant move with the thermostat out?
      do:
        - Take the thermostat out, fill the system
      results: {yes: repair, no: all-good}

Right:

    flow:
      check: Does coolant move with the thermostat out?
      do:
        - Take the thermostat out, fill the system
      put_back: Install the thermostat, fill and bleed
      results: {yes: repair, no: all-good}

Fix: Add `put_back:` to the step that takes it off; if the engine has to run with it off, to the
step in which it does.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="not-put-back",
    family=Family.STATES,
    severity=Severity.WARNING,
    summary="Something is taken off, and nothing says that it goes back on.",
)
WHICH = r"(?:the|its|both|all|each|one) "
TAKEN_OFF = re.compile(
    rf"(?:^|, )(?:(?:take|lift) {WHICH}([^,]+?) (?:out|off)\b|(?:remove|unbolt) {WHICH}([^,]+))",
    re.IGNORECASE,
)
OURS = re.compile(
    r"\b(?:cords?|keys?|clamps?|wrench|jumpers?|gauges?|meter|leads?|load|tools?|chocks?|rag|tester"
    r"|light|adapters?|charger|cap)\b"
)
INTO_A_LINE = re.compile(r"\b(?:hook up|tee in|screw in) the (\w*gauge|tester)\b", re.IGNORECASE)
OUT_AGAIN = re.compile(r"\b(?:remove|unhook|disconnect|unscrew)\b", re.IGNORECASE)
PUT_BACK = re.compile(r"\b(?:back|install|reinstall|again|refit)\b", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every line of a check that takes off what nothing puts back."""
    for step in facts.steps:
        if not isinstance(step.body, Check) or step.put_back:
            continue
        for line in step.do:
            gauge = INTO_A_LINE.search(line)
            if gauge and not _comes_out(facts, gauge[1]):
                yield RULE.finding(
                    line.at,
                    f"nothing says that the {gauge[1]} comes out again",
                    "the walk tells only what the tree names: the line stays open or leaks",
                    f"add `put_back: {_taken_out(step, gauge[1])}` to `{step.id}`",
                )
            match = TAKEN_OFF.search(line)
            part = (match[1] or match[2]) if match else ""
            if part and not OURS.search(part) and not _goes_back(facts, step, part):
                yield RULE.finding(
                    line.at,
                    f"nothing says that the {part} goes back on",
                    "the walk tells only what the tree names: the vehicle leaves without it",
                    f"add `put_back: Install the {part}` to `{step.id}`",
                )


def _taken_out(step: Step, gauge: str) -> str:
    """Say how a gauge comes out: a line that was relieved before is relieved again."""
    relieved = any("relieve" in line.casefold() for line in step.do)
    start = "Relieve pressure, remove" if relieved else "Remove"
    return f"{start} the {gauge}, check for leaks"


def _comes_out(facts: Facts, gauge: str) -> bool:
    texts = (text for step in facts.steps for text in (step.text, *step.do, step.put_back) if text)
    return any(gauge in text.lower() and OUT_AGAIN.search(text) for text in texts)


def _goes_back(facts: Facts, own: Step, part: str) -> bool:
    """Whether the step's other lines put it back, or another step names the part in doing so."""
    word = part.split()[-1].removesuffix("s").lower()
    return any(
        PUT_BACK.search(text) and (step is own or word in text.lower())
        for step in facts.tree.steps.values()
        for text in filter(None, (step.text, *step.do, step.note, step.put_back))
    )
