"""Vehicle identification numbers: signs, check digit, model year.

In: seventeen signs as typed. Out: `VehicleNumber`, with doubts where something looks wrong without
being wrong everywhere, or a `Mistake`. ISO 3779 gives the signs and their count. The check digit in
position 9 and the model year in position 10 are rules of 49 CFR 565.15 for vehicles sold in the
United States; elsewhere a number may break them and be right. The check digit does not find every
error: letters of one value (1, A and J) and some swaps of neighbours pass.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.trade.mistake import Mistake

# 49 CFR 565.15(c), tables III and IV (table numbers from memory).
VALUES: Mapping[str, int] = {
    sign: value
    for value, signs in enumerate(
        ("0", "1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ")
    )
    for sign in signs
}
WEIGHTS = (8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2)
LOOK_ALIKES = {"I": "1", "O": "0", "Q": "0"}

YEAR_CODES = "ABCDEFGHJKLMNPRSTVWXY123456789"  # 49 CFR 565.15(d)(1), table VII, from memory
FIRST_YEAR = 1980
CYCLE = len(YEAR_CODES)


@dataclass(frozen=True, slots=True)
class VehicleNumber:
    """A vehicle identification number of the right length and signs."""

    text: str
    doubts: tuple[str, ...] = ()  # worth a second look, not wrong everywhere


def parse_vehicle_number(text: str, *, must_check: bool = False) -> VehicleNumber | Mistake:
    """Read a number; lower case and blanks are taken, I, O and Q never occur in one.

    `must_check` makes a wrong check digit a mistake: only for vehicles that were sold in the
    United States, where the rule holds.
    """
    typed = "".join(text.split()).replace("-", "").upper()
    for at, sign in enumerate(typed):
        if sign not in VALUES:
            return _sign_mistake(typed, at, sign)
    if len(typed) != 17:
        return Mistake(f"a vehicle number has 17 signs, here are {len(typed)}", length=len(text))
    wrong = _check_doubt(typed)
    if must_check and wrong:
        return Mistake(wrong, at=8)
    year = () if typed[9] in YEAR_CODES else (f"{typed[9]} in position 10 is no model year",)
    return VehicleNumber(typed, (*([wrong] if wrong else []), *year))


def _sign_mistake(typed: str, at: int, sign: str) -> Mistake:
    if sign not in LOOK_ALIKES:
        return Mistake(f"{sign} in position {at + 1} never occurs in a vehicle number", at=at)
    likely = "".join(LOOK_ALIKES.get(one, one) for one in typed)
    message = f"position {at + 1} is the letter {sign}, which is never used; {LOOK_ALIKES[sign]}?"
    return Mistake(message, likely, at)


def _check_doubt(typed: str) -> str | None:
    wanted = check_digit(typed)
    if typed[8] == wanted:
        return None
    return f"check digit in position 9 is {typed[8]}, worked out {wanted}: typed wrong, or not US"


def check_digit(typed: str) -> str:
    """The sign that 49 CFR 565.15(c) wants in position 9 of seventeen legal signs."""
    total = sum(VALUES[sign] * weight for sign, weight in zip(typed, WEIGHTS, strict=True))
    return "0123456789X"[total % 11]


def model_years(number: VehicleNumber, *, light: bool | None = None) -> tuple[int, ...]:
    """Model years that the number can mean, by 49 CFR 565.15(d); () without a year in it.

    The code repeats after 30 years. For cars, multipurpose vehicles and trucks up to 4536 kg
    (10 000 lb) a digit in position 7 means 1980 to 2009 and a letter 2010 to 2039. For heavier ones
    and trailers (`light` false, or None for not known) the year stays open: both are given.
    """
    code = number.text[9]
    if code not in YEAR_CODES:
        return ()
    early = FIRST_YEAR + YEAR_CODES.index(code)
    if not light:
        return early, early + CYCLE
    return (early,) if number.text[6].isdigit() else (early + CYCLE,)
