"""How large letters must be to be read from a distance, and from where a size can be read.

In: a distance in meters, an angle in minutes of arc. Out: the height of a capital letter in
millimeters, and back. NUREG-0700 (rev. 2, 1.3.1-4): 16 minutes or more, 20 to 22 preferred.
"""

from math import atan, degrees, radians, tan

LEAST_MINUTES = 16
PREFERRED_MINUTES = 20


def capital_height(meters: float, minutes: float = PREFERRED_MINUTES) -> float:
    """Return the height in mm of a capital that fills an angle, h = 2 d tan(a / 2)."""
    return 2 * meters * 1000 * tan(radians(minutes / 60) / 2)


def reading_distance(millimeters: float, minutes: float = PREFERRED_MINUTES) -> float:
    """Return the distance in m from which a capital of this height still fills the angle."""
    return millimeters / 1000 / (2 * tan(radians(minutes / 60) / 2))


def visual_angle(millimeters: float, meters: float) -> float:
    """Return the angle in minutes of arc that a capital of this height fills at a distance."""
    return 60 * degrees(2 * atan(millimeters / 1000 / (2 * meters)))
