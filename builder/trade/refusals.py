"""What a module answers when it refuses, and what that means for a setup routine.

In: the number, the name, or the whole answer as a scan tool shows it. Out: its `Refusal`, or a
`Mistake`. Routines can move parts: keep hands clear; the vehicle maker's service information gives
the conditions.
"""

import re

from builder.trade.mistake import Mistake
from builder.trade.refusal_codes import CONDITION_RANGE, REFUSALS, SECURITY_RANGE, Refusal


def explain_refusal(number: int) -> Refusal | Mistake:
    """Explain a refusal number; where only its group is known, explain the group."""
    if number in REFUSALS:
        return REFUSALS[number]
    for numbers, kind, means in (SECURITY_RANGE, CONDITION_RANGE):
        if number in numbers:
            return Refusal(number, "", kind, means)
    return Mistake(f"{number:02X} is no refusal of the standard; record it as shown")


def parse_refusal(text: str) -> Refusal | Mistake:
    """Read a refusal as shown: `7F 31 22`, `22`, `0x22`, or its standard name, old or new."""
    bare = _bare(text)
    named = next((one for one in REFUSALS.values() if bare and bare in _names(one)), None)
    whole = re.fullmatch(r"7f[0-9a-f]{2}([0-9a-f]{2})", bare)
    single = re.fullmatch(r"(?:0x)?([0-9a-f]{2})", bare)
    if named:
        return named
    if number := whole or single:
        return explain_refusal(int(number[1], 16))
    if re.fullmatch(r"7f[0-9a-f]{2}", bare):
        return Mistake(f"{text.strip()} is cut short: the reason is the third byte, as in 7F 31 22")
    return Mistake(f"{text.strip() or 'nothing'} is no refusal: type 7F 31 22, or 22, or its name")


def _names(one: Refusal) -> tuple[str, str]:
    return _bare(one.name), _bare(one.older)


def _bare(text: str) -> str:
    return re.sub(r"[^0-9a-z]", "", text.lower())
