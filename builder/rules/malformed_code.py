"""A trouble code that is not one: the letter O for the figure 0, the letter I for 1, a sign too
many or too few. Among a tree's symptoms, in what it asks, and in the list of codes.

Why: Whoever types the code from the scan tool would not find the tree.

Wrong:

    symptom: {words: [battery light on], codes: [PO562]}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Right:

    symptom: {words: [battery light on], codes: [P0562]}
    steps:
      belt:
        check: Belt tight and dry
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: repair}

Fix: Write P, C, B or U, then 0 to 3, then three of 0 to 9 and A to F; a failure type follows as
`-16`.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.codes import parse_code
from builder.trade.mistake import Mistake

RULE = Rule(
    name="malformed-code",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A trouble code that is not one.",
)
WHY = "whoever types the code from the scan tool would not find it"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every malformed code of a tree."""
    for code in facts.tree.symptom.codes:
        yield from _code(code)
    for asked in facts.tree.asks:
        for name, answer in asked.codes.items():
            yield from _code(Text(name, answer.at))


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every malformed code of the list of codes."""
    for entry in library.codes.values():
        yield from _code(entry.code)


def _code(code: Text) -> Iterator[Finding]:
    found = parse_code(code)
    if isinstance(found, Mistake):
        hint = (
            f"write `{found.instead}`" if found.instead else "write it like `P0562` or `P0562-16`"
        )
        message = f"`{code}` is no trouble code: {_without(code.strip(), found.message)}"
    elif str(found) != code:
        message = f"`{code}` is not written as the scan tool shows it"
        hint = f"write `{found}`"
    else:
        return
    yield RULE.finding(code.at, message, WHY, hint)


def _without(code: str, message: str) -> str:
    """Leave out the code, which stands in the finding already."""
    return f"it {message.removeprefix(f'{code} ')}" if message.startswith(f"{code} ") else message
