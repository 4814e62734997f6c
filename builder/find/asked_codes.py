"""Trouble codes in what a person typed: exact, never guessed.

In: a text. Out: the codes in it, in every usual spelling (`u 0121`, `U-0121`, `U0121-87`, `0121`,
`u 0 1 2 1`), and the rest of the text. A letter O for the digit 0, and I or L for 1, are corrected,
since no code has them. The page reads codes by the patterns from here (`search-query.js`).
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from builder.trade.codes import CODE_LOOK_ALIKES

# A code with its letter, perhaps with marks between the characters, perhaps with a failure type; or
# four characters with a failure type.
WRITTEN_CODE = (
    r"(?<![a-z0-9])([pcbu])[\s._-]{0,2}([0-3o](?:[\s._-]?[0-9a-foil]){3})"
    r"(?:[-:]?([0-9a-f]{2}))?(?![a-z0-9])"
    r"|(?<![a-z0-9])()([0-3][0-9a-f]{3})-([0-9a-f]{2})(?![a-z0-9])"
)
MARKS = r"[\s._-]"
BARE_CODE = "[0-3][0-9a-f]{3}"
YEARS = (1980, 2050)  # the first, and the first beyond

_WRITTEN_CODE = re.compile(WRITTEN_CODE, re.IGNORECASE)
_MARKS = re.compile(MARKS)
_BARE_CODE = re.compile(BARE_CODE)


@dataclass(frozen=True, slots=True)
class AskedCode:
    """A code as asked for; without a letter it stands for all four."""

    letter: str  # P, C, B, U or ""
    digits: str  # four characters
    failure_type: str = ""  # two characters or ""

    def __str__(self) -> str:
        """Write it as files do."""
        return f"{self.letter}{self.digits}" + (
            f"-{self.failure_type}" if self.failure_type else ""
        )


def read_written_codes(text: str) -> tuple[list[AskedCode], str]:
    """Codes that are sure: those with a letter or a failure type; and the text without them."""
    codes: list[AskedCode] = []

    def take_out(match: re.Match[str]) -> str:
        groups = match.groups()[:3] if match[1] else match.groups()[3:]
        letter, written, failure_type = (group or "" for group in groups)
        characters = _MARKS.sub("", written)
        digits = characters.upper().translate(CODE_LOOK_ALIKES)
        if _count_digits(characters) < 1 or _count_digits(digits) < 2:
            return match[0]
        codes.append(AskedCode(letter.upper(), digits, failure_type.upper()))
        return " "

    rest = _WRITTEN_CODE.sub(take_out, text)
    return list(dict.fromkeys(codes)), rest


def _count_digits(characters: str) -> int:
    return sum(character.isdigit() for character in characters)


def read_bare_codes_and_years(
    words: Sequence[str], is_code: Callable[[str], bool], *, vehicle_named: bool
) -> tuple[list[AskedCode], list[int], list[str]]:
    """Four characters alone: a code, a model year, or a plain number; and the other words.

    With a zero in front it is a code. What could be a year is one if a vehicle was named or the
    shop knows no such code.
    """
    codes: list[AskedCode] = []
    years: list[int] = []
    others: list[str] = []
    for word in words:
        four = word.upper()
        is_year = word.isdecimal() and int(word) in range(*YEARS)
        if not _BARE_CODE.fullmatch(word):
            others.append(word)
        elif is_year and (vehicle_named or not is_code(four)):
            years.append(int(word))
        elif word.startswith("0") or is_code(four):
            codes.append(AskedCode("", four))
        else:
            others.append(word)
    return codes, years, others
