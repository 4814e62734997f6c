"""A DTC that answers a question of the tree, and stands for another answer in `kb/codes.yml`.

A code names its module there, and its words may name the wheel or the cylinder.

Why: The walk fills in the answer from the DTC, and sends the tech to the wrong module or wheel.

Wrong:

    # kb/codes.yml
    U0184: {short: No answer from the radio, module: radio}
    U0131: {short: No answer from the steering module, module: steering-unit}
    # trees/charging/case.yml
    asks:
      module:
        ask: Which module doesn't respond?
        one_of: [radio, steering-unit]
        codes: {U0184: steering-unit, U0131: radio}
    steps:
      feed:
        check: Is the power wire of the <module> good?
        results: {yes: all-good, no: repair}

Right:

    # kb/codes.yml
    U0184: {short: No answer from the radio, module: radio}
    U0131: {short: No answer from the steering module, module: steering-unit}
    # trees/charging/case.yml
    asks:
      module:
        ask: Which module doesn't respond?
        one_of: [radio, steering-unit]
        codes: {U0184: radio, U0131: steering-unit}
    steps:
      feed:
        check: Is the power wire of the <module> good?
        results: {yes: all-good, no: repair}

Fix: Write the answer that the DTC stands for; or correct `kb/codes.yml`.
"""

import re
from collections.abc import Iterator

from builder.model.finding import Finding, Related, Severity, edit_of
from builder.model.knowledge import CodeEntry
from builder.model.text import Text
from builder.model.tree import Question
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="code-answer",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A DTC with the answer of another one.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every DTC that the list of codes gives another answer."""
    for question in facts.tree.asks:
        for code, answer in question.codes.items():
            entry = facts.library.codes.get(str(code))
            if entry and (meant := _meant(question, entry, answer)):
                yield RULE.finding(
                    answer.at,
                    f"`{code}` is `{meant}` in kb/codes.yml, and `{answer}` here",
                    "the walk fills in the answer from the DTC: the tech tests the wrong one",
                    f"write `{code}: {meant}`, or correct kb/codes.yml",
                    Related(entry.code.at, f"{code}: {entry.short}"),
                    edit=edit_of(answer, meant) if entry.module == meant else None,
                )


def _meant(question: Question, entry: CodeEntry, answer: Text) -> str | None:
    """Return the answer that a code stands for; None where it isn't sure, or is this one."""
    others = {*map(str, question.one_of), *map(str, question.codes.values())} - {str(answer)}
    if entry.module and str(entry.module) in others:
        return str(entry.module)
    named = [one for one in others if _words(one) <= _words(entry.short)]
    return named[0] if len(named) == 1 and not _words(answer) <= _words(entry.short) else None


def _words(text: str) -> set[str]:
    return set(re.findall(r"[a-z0-9]+", text.casefold()))
