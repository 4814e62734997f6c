"""A step that says how long to wait, and takes less time by its `minutes` and `wait`.

Why: The chart promises an answer in 3 minutes, and the vehicle is in the bay for 13.

Wrong:

    hot:
      check: Does it start after a 10 min wait?
      minutes: 3
      results: {yes: all-good, no: repair}

Right:

    hot:
      check: Does it start after a 10 min wait?
      minutes: 3
      wait: 10
      results: {yes: all-good, no: repair}

Fix: Write the time in which nobody works under `wait`, in minutes, and the labor under `minutes`.
"""

import re
from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.text import Text
from builder.model.tree import Action, Step
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="time-not-counted",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A step that says how long to wait, and counts less.",
)
TIME = re.compile(r"\b(after|wait|sit)\b[^.?]*?\b(\d+) (min|h)\b", re.IGNORECASE)
ALONE = ("wait", "sit")  # nobody works meanwhile


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for the first such time of a step that has minutes."""
    for step in facts.steps:
        is_work = isinstance(step.body, Action) or (
            isinstance(step.body, Check) and not step.body.by
        )
        if is_work and step.minutes is not None:
            yield from _of_step(step)


def _of_step(step: Step) -> Iterator[Finding]:
    assert step.minutes is not None
    waiting = step.wait or 0
    for line in (step.text, *step.do):
        for match in TIME.finditer(line):
            time = int(match[2]) * (60 if match[3] == "h" else 1)
            is_swapped = match[1] in ALONE and waiting < time <= step.minutes and step.wait
            if is_swapped or time > step.minutes + waiting:
                yield _finding(step, line, f"{match[2]} {match[3]}", time, bool(is_swapped))
                return


def _finding(step: Step, line: Text, words: str, time: int, is_swapped: bool) -> Finding:
    assert step.minutes is not None
    wait = f"`wait: {step.wait:f}`" if step.wait is not None else "no `wait`"
    hint = f"write `wait: {time}`; `minutes` is the labor alone"
    if is_swapped:
        hint = f"the two look swapped: write `minutes: {step.wait:f}` and `wait: {step.minutes:f}`"
    return RULE.finding(
        step.minutes.at if is_swapped else line.at,
        f"it says {words}, and `{step.id}` has `minutes: {step.minutes:f}` and {wait}",
        "times on the chart, and the labor that is billed, would be wrong",
        hint,
    )
