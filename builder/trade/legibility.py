"""How large letters must be to be read from a distance, and from where a size can be read.

In: a distance in metres, an angle in minutes of arc. Out: the height of a capital letter in
millimetres, and back. NUREG-0700 (rev. 2, 1.3.1-4): 16 minutes at least, 20 to 22 preferred.
"""

from math import atan, degrees, radians, tan

LEAST_MINUTES = 16
PREFERRED_MINUTES = 20


def capital_height(metres: float, minutes: float = PREFERRED_MINUTES) -> float:
    """Height in mm of a capital that fills an angle at a distance: h = 2 d tan(a / 2)."""
    return 2 * metres * 1000 * tan(radians(minutes / 60) / 2)


def reading_distance(millimetres: float, minutes: float = PREFERRED_MINUTES) -> float:
    """Distance in m from which a capital of this height still fills the angle."""
    return millimetres / 1000 / (2 * tan(radians(minutes / 60) / 2))


def visual_angle(millimetres: float, metres: float) -> float:
    """Angle in minutes of arc that a capital of this height fills at a distance."""
    return 60 * degrees(2 * atan(millimetres / 1000 / (2 * metres)))
