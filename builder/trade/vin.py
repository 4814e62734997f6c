"""Vehicle identification numbers (VINs): characters, check digit, model year.

In: seventeen characters as typed. Out: `Vin`, with doubts where something looks wrong without being
wrong everywhere, or a `Mistake`. ISO 3779 gives the characters and their count. The check digit in
position 9 and the model year in position 10 are rules of 49 CFR 565.15 for vehicles sold in the
United States; elsewhere a VIN may break them and be right. The check digit doesn't catch every
error: letters of one value (1, A, and J) and some swaps of neighbors pass.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.trade.mistake import Mistake

# 49 CFR 565.15(c), tables III and IV (table numbers from memory).
VIN_VALUES: Mapping[str, int] = {
    character: value
    for value, characters in enumerate(
        ("0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ")
    )
    for character in characters
}
VIN_WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
VIN_LOOK_ALIKES = {"I": "1", "O": "0", "Q": "0"}

YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789"  # 49 CFR 565.15(d)(1), table VII, from memory
FIRST_YEAR = 1980
YEAR_CYCLE = len(YEAR_CODES)


@dataclass(frozen=True, slots=True)
class Vin:
    """A vehicle identification number of the right length and characters."""

    text: str
    doubts: tuple[str, ...] = ()  # worth a second look, not wrong everywhere


def parse_vin(text: str, *, must_check: bool = False) -> Vin | Mistake:
    """Read a VIN; lower case, spaces, and hyphens are accepted, I, O, and Q never occur in one.

    `must_check` makes a wrong check digit a mistake: only for vehicles that were sold in the
    United States, where the rule holds.
    """
    vin = "".join(text.split()).replace("-", "").upper()
    for at, character in enumerate(vin):
        if character not in VIN_VALUES:
            return _character_mistake(vin, at, character)
    if len(vin) != 17:
        return Mistake(f"a VIN has 17 characters; you entered {len(vin)}", length=len(text))
    wrong = _check_doubt(vin)
    if must_check and wrong:
        return Mistake(wrong, at=8)
    year = () if vin[9] in YEAR_CODES else (f"{vin[9]} in position 10 is no model year",)
    return Vin(vin, (*([wrong] if wrong else []), *year))


def _character_mistake(vin: str, at: int, character: str) -> Mistake:
    if character not in VIN_LOOK_ALIKES:
        return Mistake(f"{character} in position {at + 1} is never used in a VIN", at=at)
    likely = "".join(VIN_LOOK_ALIKES.get(one, one) for one in vin)
    digit = VIN_LOOK_ALIKES[character]
    message = f"position {at + 1} is the letter {character}, which is never used; is it {digit}?"
    return Mistake(message, likely, at)


def _check_doubt(vin: str) -> str | None:
    digit = check_digit(vin)
    if vin[8] == digit:
        return None
    return f"check digit in position 9 is {vin[8]}, calculated {digit}: check your entry, or non-US"


def check_digit(vin: str) -> str:
    """Return the character that 49 CFR 565.15(c) puts in position 9 of seventeen legal ones."""
    total = sum(VIN_VALUES[one] * weight for one, weight in zip(vin, VIN_WEIGHTS, strict=True))
    return "0123456789X"[total % 11]


def model_years(vin: Vin, *, light: bool | None = None) -> tuple[int, ...]:
    """Return the model years that a VIN can mean, by 49 CFR 565.15(d); () where it has none.

    The code repeats after 30 years. For cars, multipurpose vehicles, and trucks up to 10,000 lb
    (4536 kg) a digit in position 7 means 1980 to 2009 and a letter 2010 to 2039. For heavier ones
    and trailers (`light` is False, or None for unknown) the year stays open: both are returned.
    """
    code = vin.text[9]
    if code not in YEAR_CODES:
        return ()
    early = FIRST_YEAR + YEAR_CODES.index(code)
    if not light:
        return early, early + YEAR_CYCLE
    return (early,) if vin.text[6].isdigit() else (early + YEAR_CYCLE,)
