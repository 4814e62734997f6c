"""Diagnostic trouble codes (DTCs) in their two-byte and three-byte forms.

In: a code as typed or as bytes. Out: `Code`, its text, its bytes, who controls its range, and
its failure type. Structure after SAE J2012 / ISO 15031-6: two bits for the system letter, two
for the second character, twelve for three hexadecimal digits, then one failure type byte or none.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from builder.trade.mistake import Mistake

CODE_SYSTEMS: Mapping[str, str] = {"P": "powertrain", "C": "chassis", "B": "body", "U": "network"}
SYSTEM_LETTERS = "PCBU"  # in the order of the two highest bits

# For a schema: the one spelling that files use. `parse_code` accepts more of what people type.
CODE_PATTERN = r"^[PCBU][0-3][0-9A-F]{3}(-[0-9A-F]{2})?$"

_SHAPE = re.compile(r"([PCBU])([0-3])([0-9A-F]{3})(?:[-: ]?([0-9A-F]{2}))?")
CODE_LOOK_ALIKES = str.maketrans("OQIL", "0011")


@dataclass(frozen=True, slots=True)
class Code:
    """A DTC: sixteen bits, and the failure type byte of the three-byte form."""

    number: int  # 0 to 0xFFFF
    failure_type: int | None = None  # 0 to 0xFF; None in the two-byte form

    @property
    def system(self) -> str:
        """The system that the first letter names."""
        return CODE_SYSTEMS[SYSTEM_LETTERS[self.number >> 14]]

    @property
    def two_byte(self) -> "Code":
        """The same code without its failure type."""
        return Code(self.number)

    def __str__(self) -> str:
        """Write the code as files do: P0562, P0562-16."""
        short = (
            f"{SYSTEM_LETTERS[self.number >> 14]}{self.number >> 12 & 3}{self.number & 0xFFF:03X}"
        )
        return short if self.failure_type is None else f"{short}-{self.failure_type:02X}"


def parse_code(text: str) -> Code | Mistake:
    """Read a code as people type it: any letter case, spaces around, `-`, `:`, or nothing between.

    Look-alikes are never fixed silently: the mistake carries the likely code as `instead`.
    """
    typed = text.strip().upper()
    match = _SHAPE.fullmatch(typed)
    if match:
        return _from_parts(*match.groups())
    likely_text = typed[:1] + typed[1:].translate(CODE_LOOK_ALIKES)
    likely = _SHAPE.fullmatch(likely_text)
    if likely:
        pairs = enumerate(zip(typed, likely_text, strict=True))
        at = next(at for at, (was, now) in pairs if was != now)
        start = len(text) - len(text.lstrip()) + at
        message = f"{text.strip()} has the letter {typed[at]} where a digit belongs"
        return Mistake(message, instead=str(_from_parts(*likely.groups())), at=start)
    return _mistake(typed, text)


def _from_parts(letter: str, second: str, digits: str, failure_type: str | None) -> Code:
    number = SYSTEM_LETTERS.index(letter) << 14 | int(second) << 12 | int(digits, 16)
    return Code(number, None if failure_type is None else int(failure_type, 16))


def _mistake(typed: str, text: str) -> Mistake:
    """Explain which part of a malformed code is wrong."""
    start = len(text) - len(text.lstrip())
    if not typed:
        return Mistake("enter a code, such as P0562 or P0562-16")
    if typed[0] not in CODE_SYSTEMS:
        return Mistake(f"a code starts with P, C, B or U, not with {typed[0]}", at=start)
    if re.fullmatch("[PCBU][0-9A-F]{3}", typed):
        message = f"{text.strip()} is too short: a letter and four characters, as in P0562"
        return Mistake(message, instead=f"{typed[0]}0{typed[1:]}", at=start, length=len(typed))
    if len(typed) > 1 and typed[1] not in "0123":
        message = f"the second character of a code is 0, 1, 2 or 3, not {typed[1]}"
        return Mistake(message, at=start + 1)
    for at, character in enumerate(typed[2:5], start=2):
        if character not in "0123456789ABCDEF":
            message = f"{character} is no hexadecimal digit; the last three are 0 to 9 or A to F"
            return Mistake(message, at=start + at)
    if len(typed) < 5:
        message = f"{text.strip()} is too short: a letter and four characters, as in P0562"
        return Mistake(message, at=start, length=len(typed))
    message = f"{text.strip()[5:]} is no failure type: two hexadecimal digits, as in P0562-16"
    return Mistake(message, at=start + 5, length=len(typed) - 5)


def code_bytes(code: Code) -> bytes:
    """Return two bytes, or three with the failure type, high byte first as on the network."""
    short = code.number.to_bytes(2, "big")
    return short if code.failure_type is None else short + bytes([code.failure_type])


def code_from_bytes(data: bytes) -> Code | Mistake:
    """Read two or three bytes; two zero bytes only fill an empty slot, see `is_padding`."""
    if len(data) not in (2, 3):
        return Mistake(f"a code has two or three bytes, not {len(data)}")
    return Code(int.from_bytes(data[:2], "big"), data[2] if len(data) == 3 else None)


def is_padding(code: Code) -> bool:
    """Return whether this is no code at all but the zeros that fill an answer."""
    return code.number == 0 and not code.failure_type


def code_owner(code: Code) -> str:
    """Return who defines the code: `standard` (ISO/SAE) or `maker`.

    Ranges of SAE J2012 / ISO 15031-6, from memory. A maker's code means something only with the
    make; look it up in its service information.
    """
    letter, second = SYSTEM_LETTERS[code.number >> 14], code.number >> 12 & 3
    if letter == "P":
        by_maker = second == 1 or (second == 3 and (code.number & 0xFFF) < 0x400)
    else:
        by_maker = second in (1, 2)
    return "maker" if by_maker else "standard"
