"""Trouble codes in what a person typed: exact, never guessed.

In: a text. Out: the codes in it, in every usual spelling (`u 0121`, `U-0121`, `U0121-87`, `0121`),
and the rest of the text. A letter O for the figure 0, and I or L for 1, are mended, since no code
has them. Mirrored by `web/search-words.js`.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

_WRITTEN = re.compile(
    r"(?<![a-z0-9])([pcbu])[\s._-]{0,2}([0-3o][0-9a-foil]{3})(?:[-:]?([0-9a-f]{2}))?(?![a-z0-9])"
    r"|(?<![a-z0-9])()([0-3][0-9a-f]{3})-([0-9a-f]{2})(?![a-z0-9])",
    re.IGNORECASE,
)
_BARE = re.compile(r"[0-3][0-9a-f]{3}")
_LOOK_ALIKES = str.maketrans("OIL", "011")
_YEARS = range(1980, 2050)


@dataclass(frozen=True, slots=True)
class AskedCode:
    """A code as asked for; without a letter it stands for all four."""

    letter: str  # P, C, B, U or ""
    digits: str  # four signs
    failure_type: str = ""  # two signs or ""

    def __str__(self) -> str:
        """Write it as files do."""
        return f"{self.letter}{self.digits}" + (
            f"-{self.failure_type}" if self.failure_type else ""
        )


def written_codes(text: str) -> tuple[list[AskedCode], str]:
    """Codes that are sure: those with a letter or a failure type; and the text without them."""
    codes: list[AskedCode] = []

    def keep(found: re.Match[str]) -> str:
        letter, signs, failure_type = (
            sign or "" for sign in (found.groups()[:3] if found[1] else found.groups()[3:])
        )
        if sum(sign.isdigit() for sign in signs) < 2:
            return found[0]
        digits = signs.upper().translate(_LOOK_ALIKES)
        codes.append(AskedCode(letter.upper(), digits, failure_type.upper()))
        return " "

    rest = _WRITTEN.sub(keep, text)
    return list(dict.fromkeys(codes)), rest


def bare_codes_and_years(
    words: Sequence[str], digits: Mapping[str, tuple[str, ...]], *, vehicle_named: bool
) -> tuple[list[AskedCode], list[int], list[str]]:
    """Four signs alone: a code, a model year, or a plain number; and the other words.

    With a nought in front it is a code. What could be a year is one if a vehicle was named or no
    tree has such a code.
    """
    codes: list[AskedCode] = []
    years: list[int] = []
    others: list[str] = []
    for word in words:
        four = word.upper()
        year = word.isdecimal() and int(word) in _YEARS
        if not _BARE.fullmatch(word):
            others.append(word)
        elif year and (vehicle_named or four not in digits):
            years.append(int(word))
        elif word.startswith("0") or four in digits:
            codes.append(AskedCode("", four))
        else:
            others.append(word)
    return codes, years, others
