"""Whether a repair is of a part that a vehicle has more than one of: a claim needs to know which.

In: what is done, the names of the parts. Out: yes or no. A repair that says where it is, or that is
of all of them (`Balance the wheels`), leaves no question.
"""

import re
from collections.abc import Iterable

_PARTS = re.compile(
    r"\b(?:(?:brake )?pads?|(?:brake )?shoes|rotors?|brake hose|brake line|caliper|wheel cylinder|"
    r"slide pins?|hub(?: bearing)?|wheel bearing|axle shaft|cv joint|ball joint|tie rod|shock|"
    r"strut|suspension part|wheel speed sensor|tire pressure sensor|rim|headlight lens|lens|bulb|"
    r"(?:the|damaged) tire(?! pressures?)|replace the wheel|parking brake (?:actuator|cable)|"
    r"(?<!blend )door|window (?:motor|regulator|switch)|ignition coil|(?<!DEF )injector|"
    r"spark plug|crash sensor|mount)\b",
    re.IGNORECASE,
)
_PLACES = re.compile(
    r"\b(?:left|right|front|rear|driver(?:'s)?|passenger(?:'s)?|both|all|each|every|cylinder \d+|"
    r"bank \d)\b",
    re.IGNORECASE,
)


def has_several_places(repair: str, parts: Iterable[str]) -> bool:
    """Whether a repair leaves open which of several like parts it is of."""
    words = [repair, *parts]
    return any(map(_PARTS.search, words)) and not any(map(is_placed, words))


def is_placed(text: str) -> bool:
    """Whether a text names a side, an axle, a cylinder, or all of them."""
    return bool(_PLACES.search(text))
