"""A DTC that isn't one: the letter O in place of the digit 0, the letter I in place of 1, a
character too many or too few. In a tree's symptom, in what it asks, and in `kb/codes.yml`.

Why: A tech who types the DTC from the scan tool won't find the tree.

Wrong:

    symptom: {words: [battery light on], codes: [PO562]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    symptom: {words: [battery light on], codes: [P0562]}
    steps:
      belt:
        check: Is the belt tight and dry?
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write P, C, B or U, then 0 to 3, then three of 0 to 9 and A to F; a failure type byte follows
as `-16`.
"""

import re
from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity, edit_of
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.codes import parse_code
from builder.trade.mistake import Mistake

RULE = Rule(
    name="malformed-code",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A DTC that isn't one.",
)
ONE_TOO_MANY = re.compile(r"[PCBU][0-3][0-9A-F]{4}")
WHY = "a tech who types the DTC from the scan tool won't find it"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every malformed DTC of a tree."""
    for code in facts.tree.symptom.codes:
        yield from _code(code)
    for question in facts.tree.asks:
        for name, answer in question.codes.items():
            yield from _code(Text(name, answer.at))


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every malformed DTC of the list of codes."""
    for entry in library.codes.values():
        yield from _code(entry.code)


def _code(code: Text) -> Iterator[Finding]:
    parsed = parse_code(code)
    if isinstance(parsed, Mistake):
        form = f"`{parsed.instead}`" if parsed.instead else "it like `P0562` or `P0562-16`"
        hint, right = f"write {form}", parsed.instead
        message = f"`{code}` is not a DTC: {_without(code.strip(), parsed.message)}"
        if ONE_TOO_MANY.fullmatch(code):
            message = f"`{code}` is not a DTC: it has a character too many"
            hint = f"write the letter and four characters, as in `P0562`: `{code[:5]}` or another"
    elif str(parsed) != code:
        message = f"`{code}` is not written as the scan tool shows it"
        hint, right = f"write `{parsed}`", str(parsed)
    else:
        return
    edit = edit_of(code, right) if right else None
    yield RULE.finding(code.at, message, WHY, hint, edit=edit)


def _without(code: str, message: str) -> str:
    """Remove the code, which the finding names already."""
    return f"it {message.removeprefix(f'{code} ')}" if message.startswith(f"{code} ") else message
