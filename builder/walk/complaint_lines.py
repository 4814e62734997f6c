"""A complaint of several parts, held against the one thing that was found.

In: the customer's words, whether another tree took over, what the tech wrote. Out: lines for the
papers. Nobody but the tech knows which part a cause explains: where a complaint seems to have more
than one and nobody wrote of them, there is a line for the pen.
"""

import re
from collections.abc import Mapping

from builder.walk.job_details import BLANK

REST, AFTER = "complaint", "after"  # names of the tech's own words
CAUSED, NEXT = "caused", "next"  # damage that the fault did; what becomes of the rest
NOTHING = "none"  # typed where the cause explains all of it
OF_FAULT = "The fault that we found:"  # where not all of the complaint is diagnosed
ALL_OF_IT = "The cause below explains all of it."
_NOTHING = re.compile(r"(?:none|nothing|no)\b", re.IGNORECASE)
_SEVERAL = re.compile(r"\b(?:and|also|plus|then|too)\b|[;+&]", re.IGNORECASE)


def has_several_parts(complaint: str, handed_off: bool) -> bool:
    """Whether a complaint seems to name more than one thing, or led on to another tree."""
    return bool(complaint) and (handed_off or bool(_SEVERAL.search(complaint)))


def complaint_lines(
    complaint: str, handed_off: bool, own: Mapping[str, str], is_closed: bool
) -> list[str]:
    """Return how each part of a complaint stands: explained, damaged by the fault, or open.

    `is_closed`: for the repair order, which says what becomes of what is left.
    """
    caused, rest = own.get(CAUSED, ""), own.get(REST, "")
    left = unexplained_text(rest)
    becomes = f"What becomes of it: {own.get(NEXT) or BLANK * 2}" if left and is_closed else ""
    is_one = rest.casefold() == NOTHING and has_several_parts(complaint, handed_off)
    lines = [
        f"Also damaged by this fault: {caused}." if caused and not _NOTHING.match(caused) else "",
        left,
        becomes,
        ALL_OF_IT if is_one and (not caused or _NOTHING.match(caused)) else "",
    ]
    return [*filter(None, lines)]


def unexplained_text(own: str) -> str:
    """Say what of the complaint the cause doesn't explain; "" for nothing, or not known."""
    if not own or own.casefold() == NOTHING:
        return ""
    return f"Also in the complaint, not explained by this cause and not diagnosed yet: {own}."


def open_complaint(own: Mapping[str, str]) -> str:
    """Return what of the complaint isn't diagnosed, as the tech wrote it; "" for nothing."""
    rest = own.get(REST, "")
    return rest if unexplained_text(rest) else ""


def unchecked(rest: str) -> str:
    """Say of what isn't diagnosed that nobody knows if the vehicle is safe to drive with it."""
    return f"Not checked: {rest}. We can't say if it is safe to drive with that."


def unexplained_blank(complaint: str, handed_off: bool, own: str) -> str:
    """Return what a pen completes, where nobody wrote of a complaint of several parts."""
    is_asked = not own and has_several_parts(complaint, handed_off)
    return "Part of the complaint that this cause doesn't explain (or none):" if is_asked else ""


def after_repair_text(complaint: str, handed_off: bool, own: str, has_codes: bool) -> str:
    """Say what an auditor looks for after a repair, as far as no step of the walk said it.

    `has_codes`: DTCs after the repair are on record.
    """
    if own:
        return f"Complaint and DTCs after the repair: {own}."
    every = ", every part of it" if has_several_parts(complaint, handed_off) else ""
    codes = "" if has_codes else f". DTCs after the repair: {BLANK}"
    return f"Complaint gone{every}: {BLANK}{codes}"
