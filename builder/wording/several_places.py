"""Whether a repair is of a part that a vehicle has more than one of: a claim needs to know which.

In: what is done, the names of the parts. Out: yes or no; a check of each of them, said of the one
that is known: `water in the right front corner`. A repair that says where it is, or that is
of all of them (`Balance the wheels`), leaves no question.
"""

import re
from collections.abc import Iterable

_PARTS = re.compile(
    r"\b(?:(?:brake )?pads?|(?:brake )?shoes|rotors?|brake hose|brake line|caliper|wheel cylinder|"
    r"slide pins?|hub(?: bearing)?|wheel bearing|axle shaft|cv joint|ball joint|tie rod|shock|"
    r"strut|suspension part|wheel speed sensor|tire pressure sensor|rim|headlight lens|lens|bulb|"
    r"(?:the|damaged) tire(?! pressures?)|replace the wheel|parking brake (?:actuator|cable)|"
    r"door|drains|glass|the window(?! lock)|socket pigtail|lamp ground|patch plug|"
    r"valve stem|window (?:motor|regulator|switch)|ignition coil|(?<!DEF )injector|"
    r"spark plug|crash sensor|mount)\b",
    re.IGNORECASE,
)
_PLACES = re.compile(
    r"\b(?:left|right|front|rear|driver(?:'s)?|passenger(?:'s)?|both|all|each|every|cylinder \d+|"
    r"bank \d)\b",
    re.IGNORECASE,
)

_SIDE = r"(?:left|right|front|rear|driver's|passenger's)"
_NAMED_SIDE = re.compile(rf"\b{_SIDE}(?: {_SIDE})*\b", re.IGNORECASE)


def has_several_places(repair: str, parts: Iterable[str]) -> bool:
    """Whether a repair leaves open which of several like parts it is of."""
    words = [repair, *parts]
    return any(map(_PARTS.search, words)) and not any(map(is_placed, words))


def is_placed(text: str) -> bool:
    """Whether a text names a side, an axle, a cylinder, or all of them."""
    return bool(_PLACES.search(text))


def place_named(text: str) -> str:
    """Return the side or the axle that a text names: `left rear`; "" for none."""
    match = re.search(rf"\b(?:(?:both|each) )?{_SIDE}(?: {_SIDE})*\b", text, re.IGNORECASE)
    return match[0].lower() if match else ""


def at_place(asked: str, texts: Iterable[str]) -> str:
    """Write a check of `each` part as one of the part that the first text with a side names."""
    sides = (match for text in texts if (match := _NAMED_SIDE.search(text)))
    side = next(sides, None)
    return re.sub(r"\beach\b", f"the {side[0].lower()}", asked) if side else asked
