"""Advice on driving that depends on how the vehicle is now: a sheet asks, it doesn't say both.

In: `If brakes, steering, or lights are affected, don't drive it.` Out: the order and the condition.
What the driver notices later (`If you smell fuel, ...`) is no question of today.
"""

import re

from builder.model.ends import Drive
from builder.wording.vehicle_words import DRIVING, driving_text

_CONDITION = re.compile(
    r"If (?P<what>(?!you\b)[^.]+?), (?P<order>don't drive it)(?P<more>:[^.]+)?\.", re.IGNORECASE
)


def condition_of(why: str) -> tuple[str, str]:
    """Return when the vehicle must not be driven, and why with the condition left out; "" for none.

    `it grinds: the pads may be gone`, of `If it grinds, don't drive it: the pads may be gone.`
    """
    match = _CONDITION.search(why)
    if match is None:
        return "", why
    rest = f"{why[: match.start()]}{why[match.end() :]}".strip()
    return f"{match['what']}{match['more'] or ''}", " ".join(rest.split())


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
