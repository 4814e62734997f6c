"""The failure type byte: the third byte of a DTC, which tells how the circuit failed.

In: a byte. Out: its category and our own short wording. The high half of the byte is the category
(from the byte's own low values: 01 electrical, so 1x electrical). Numbers after SAE J2012-DA, whose
text is not reproduced; a byte that is not listed still has its category.
"""

from collections.abc import Mapping
from dataclasses import dataclass

FAILURE_CATEGORIES: tuple[str, ...] = (
    "general",
    "electrical",
    "signal",
    "pulse width or frequency signal",
    "inside the module",
    "programming or setup",
    "calculation",
    "mechanical",
    "network message",
    "component",
)

# Our wording. 0x71 is from memory, 0x67 in part; the others were seen in public lists.
FAILURE_TYPE_WORDS: Mapping[int, str] = {
    0x00: "no further detail",
    0x01: "electrical fault",
    0x02: "signal fault",
    0x03: "pulse width or frequency fault",
    0x04: "fault inside the module",
    0x05: "programming fault",
    0x06: "calculation fault",
    0x07: "mechanical fault",
    0x08: "network message fault",
    0x09: "component fault",
    0x11: "shorted to ground",
    0x12: "shorted to battery positive",
    0x13: "open circuit",
    0x14: "shorted to ground or open",
    0x15: "shorted to battery positive or open",
    0x16: "voltage too low",
    0x17: "voltage too high",
    0x18: "current too low",
    0x19: "current too high",
    0x1A: "resistance too low",
    0x1B: "resistance too high",
    0x1C: "voltage outside its range",
    0x1D: "current outside its range",
    0x1E: "resistance outside its range",
    0x1F: "circuit intermittent",
    0x21: "signal too small",
    0x22: "signal too large",
    0x23: "signal stuck low",
    0x24: "signal stuck high",
    0x29: "signal invalid",
    0x2F: "signal erratic",
    0x31: "no signal",
    0x36: "frequency too low",
    0x37: "frequency too high",
    0x38: "frequency wrong",
    0x41: "checksum wrong",
    0x42: "memory fault",
    0x44: "data memory fault",
    0x45: "program memory fault",
    0x46: "stored calibration fault",
    0x47: "restarted by its watchdog",
    0x48: "supervision software fault",
    0x49: "internal electronic fault",
    0x4A: "wrong module installed",
    0x4B: "over temperature inside",
    0x51: "not programmed",
    0x52: "not activated",
    0x53: "deactivated",
    0x54: "calibration missing",
    0x55: "not configured",
    0x56: "wrong configuration",
    0x61: "calculated signal wrong",
    0x62: "two signals disagree",
    0x64: "signal implausible",
    0x67: "signal wrong after an event",
    0x71: "actuator stuck",
    0x72: "actuator stuck open",
    0x73: "actuator stuck closed",
    0x81: "wrong data received",
    0x82: "message counter wrong",
    0x83: "message protection value wrong",
    0x87: "message missing",
    0x88: "bus off",
    0x92: "performance or operation wrong",
    0x94: "no operation",
    0x95: "wrong assembly",
    0x99: "learning limit exceeded",
}

# The setup step that a failure type asks for.
SETUP_STEP_MISSING: Mapping[int, str] = {
    0x51: "programming",
    0x54: "initialization",
    0x55: "configuration",
    0x56: "configuration",
}


@dataclass(frozen=True, slots=True)
class FailureTypeByte:
    """The third byte of a DTC, explained."""

    number: int
    category: str
    words: str | None  # None when the byte is not in our list


def failure_type_byte(number: int) -> FailureTypeByte:
    """Explain a failure type byte (0 to 0xFF)."""
    group = number >> 4 or number & 0xF  # 01 to 09 are named like the groups 1x to 9x
    category = FAILURE_CATEGORIES[group] if group < len(FAILURE_CATEGORIES) else "reserved"
    return FailureTypeByte(number, category, FAILURE_TYPE_WORDS.get(number))
