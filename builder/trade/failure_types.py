"""The failure type byte: the third byte of a trouble code, which says how the circuit failed.

In: a byte. Out: its category and short words of our own. The high half of the byte is the category
(from the byte's own low values: 01 electrical, so 1x electrical). Numbers after SAE J2012-DA, whose
text is not reproduced; a byte that is not listed still has its category.
"""

from collections.abc import Mapping
from dataclasses import dataclass

CATEGORIES: tuple[str, ...] = (
    "general",
    "electrical",
    "signal",
    "pulse width or frequency signal",
    "inside the unit",
    "programming or set-up",
    "calculation",
    "mechanical",
    "network message",
    "component",
)

# Wordings are ours. 0x71 is from memory, 0x67 in part; the others were seen in public lists.
WORDS: Mapping[int, str] = {
    0x00: "no further detail",
    0x01: "electrical fault",
    0x02: "signal fault",
    0x03: "pulse width or frequency fault",
    0x04: "fault inside the unit",
    0x05: "programming fault",
    0x06: "calculation fault",
    0x07: "mechanical fault",
    0x08: "network message fault",
    0x09: "component fault",
    0x11: "shorted to ground",
    0x12: "shorted to battery plus",
    0x13: "open circuit",
    0x14: "shorted to ground or open",
    0x15: "shorted to battery plus or open",
    0x16: "voltage too low",
    0x17: "voltage too high",
    0x18: "current too low",
    0x19: "current too high",
    0x1A: "resistance too low",
    0x1B: "resistance too high",
    0x1C: "voltage outside its range",
    0x1D: "current outside its range",
    0x1E: "resistance outside its range",
    0x1F: "circuit comes and goes",
    0x21: "signal too small",
    0x22: "signal too large",
    0x23: "signal stuck low",
    0x24: "signal stuck high",
    0x29: "signal not believable",
    0x2F: "signal jumps about",
    0x31: "no signal",
    0x36: "frequency too low",
    0x37: "frequency too high",
    0x38: "frequency wrong",
    0x41: "checksum wrong",
    0x42: "memory fault",
    0x44: "data memory fault",
    0x45: "program memory fault",
    0x46: "stored calibration fault",
    0x47: "restarted by its own watchdog",
    0x48: "supervising software fault",
    0x49: "electronics faulty inside",
    0x4A: "wrong unit fitted",
    0x4B: "too hot inside",
    0x51: "not programmed",
    0x52: "not activated",
    0x53: "switched off",
    0x54: "calibration missing",
    0x55: "not configured",
    0x56: "configuration does not fit",
    0x61: "calculated signal wrong",
    0x62: "two signals disagree",
    0x64: "signal does not fit the others",
    0x67: "signal wrong after an event",
    0x71: "actuator stuck",
    0x72: "actuator stuck open",
    0x73: "actuator stuck closed",
    0x81: "wrong data received",
    0x82: "message counter wrong",
    0x83: "message protection value wrong",
    0x87: "message missing",
    0x88: "network shut off",
    0x92: "works badly or wrongly",
    0x94: "does not work",
    0x95: "assembled wrongly",
    0x99: "has learned as far as it can",
}

# The set-up step that a failure type asks for, in the words of the tree format.
SET_UP_MISSING: Mapping[int, str] = {
    0x51: "program",
    0x54: "initialise",
    0x55: "configure",
    0x56: "configure",
}


@dataclass(frozen=True, slots=True)
class FailureType:
    """What the third byte of a code says."""

    number: int
    category: str
    words: str | None  # None when the byte is not in our list


def failure_type(number: int) -> FailureType:
    """Explain a failure type byte (0 to 0xFF)."""
    group = number >> 4 or number & 0xF  # 01 to 09 name the groups 1x to 9x
    category = CATEGORIES[group] if group < len(CATEGORIES) else "reserved"
    return FailureType(number, category, WORDS.get(number))
