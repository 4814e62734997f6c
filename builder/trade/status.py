"""The status byte of a DTC, and what it means after clearing and a key cycle.

In: a byte as shown by a scan tool. Out: the names of its set bits, one of four answers, and what in
it contradicts itself. Bits after ISO 14229-1 annex D. Asking only "did the code come back" misses
the case in which the module hasn't tested yet: the absence of a code then proves nothing.
"""

import re

from builder.trade.mistake import Mistake

BITS: tuple[str, ...] = (
    "fails now",
    "failed in this key cycle",
    "pending",
    "confirmed",
    "not tested since clearing",
    "failed since clearing",
    "not tested in this key cycle",
    "warning light requested",
)
FAILS_NOW, FAILED_CYCLE, PENDING, CONFIRMED = 0x01, 0x02, 0x04, 0x08
UNTESTED_CLEAR, FAILED_CLEAR, UNTESTED_CYCLE = 0x10, 0x20, 0x40

PRESENT, INTERMITTENT, STORED, UNTESTED = (
    "present now",
    "intermittent",
    "stored",
    "not yet tested",
)


def parse_status(text: str) -> int | Mistake:
    """Read a status byte as two hexadecimal digits, with or without 0x before them."""
    match = re.fullmatch(r"(?:0[xX])?([0-9A-Fa-f]{2})", text.strip())
    if not match:
        return Mistake(f"{text.strip()} is no status byte: two hexadecimal digits, as in 2F")
    return int(match[1], 16)


def set_bits(status: int) -> tuple[str, ...]:
    """Names of the bits that are set, lowest first."""
    return tuple(name for place, name in enumerate(BITS) if status >> place & 1)


def after_key_cycle(status: int, supported: int = 0xFF) -> str:
    """Classify a code read after clearing, a key cycle, and the conditions that enable its test.

    `supported` is the module's mask of bits that it keeps; what it doesn't keep reads zero, so
    without the bits for "not tested" a passed code looks like an untested one.
    """
    if status & UNTESTED_CYCLE:
        return UNTESTED
    if status & FAILS_NOW:
        return PRESENT
    if status & FAILED_CYCLE:
        return INTERMITTENT
    return STORED if supported & UNTESTED_CYCLE else UNTESTED


def contradictions(status: int) -> tuple[str, ...]:
    """Explain which bits of a byte contradict: a typing error, or a module that leaves bits out.

    Follows from the definitions of the bits (own derivation). Ask about such a
    byte, never reject it.
    """
    reasons = []
    if status & FAILED_CYCLE and not status & PENDING:
        reasons.append("failed in this key cycle, yet not pending")
    if status & FAILED_CYCLE and not status & FAILED_CLEAR:
        reasons.append("failed in this key cycle, yet not since clearing")
    if status & FAILED_CYCLE and status & UNTESTED_CYCLE:
        reasons.append("failed in this key cycle, yet not tested in it")
    failed = FAILS_NOW | FAILED_CYCLE | PENDING | CONFIRMED | FAILED_CLEAR
    if status & UNTESTED_CLEAR and status & failed:
        reasons.append("not tested since clearing, yet failed")
    if status & UNTESTED_CLEAR and not status & UNTESTED_CYCLE:
        reasons.append("tested in this key cycle, yet not since clearing")
    return tuple(reasons)
