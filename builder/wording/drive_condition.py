"""Advice on driving that depends on how the vehicle is now: a sheet asks, it doesn't say both.

In: `If brakes, steering, or lights are affected, don't drive it.` Out: the order and the condition.
What the driver notices later (`If you smell fuel, ...`) is no question of today.
"""

import re

from builder.model.ends import Drive
from builder.wording.sentences import uncapitalized
from builder.wording.vehicle_words import DRIVING, driving_text

_CONDITION = re.compile(
    r"(?:If (?P<what>(?!you\b)[^.]+?), don't drive it(?P<more>:[^.]+)?|"
    r"(?P<short>[^.?]+)\? Don't drive it)\.",
    re.IGNORECASE,
)


def condition_of(why: str) -> tuple[str, str]:
    """Return when the vehicle must not be driven, and why with the condition left out; "" for none.

    `it grinds: the pads may be gone`, of `If it grinds, don't drive it: the pads may be gone.`
    """
    match = _CONDITION.search(why)
    if match is None:
        return "", why
    rest = f"{why[: match.start()]}{why[match.end() :]}".strip()
    short = uncapitalized((match["short"] or "").strip())
    return short or f"{match['what']}{match['more'] or ''}", " ".join(rest.split())


def driving_lines(drive: Drive, why: str) -> list[str]:
    """Return the advice on driving; where it depends on a check, that is left to be ticked."""
    condition, rest = condition_of(why)
    if not condition or drive is Drive.NO:
        return [driving_text(drive, why)]
    return [
        "We check this and tick one. Until then, don't drive it.",
        f"☐ Don't drive it: {condition}.",
        f"☐ {DRIVING[drive]}. We checked, and that isn't so. {rest}".rstrip(),
    ]


def came_in_line(drive: Drive, why: str) -> str:
    """Return the advice as it held before a repair that is done."""
    condition, rest = condition_of(why)
    if not condition or drive is Drive.NO:
        return f"As it came in: {uncapitalized(driving_text(drive, why))}"
    return f"As it came in: don't drive it if {condition}. {rest}".rstrip()
