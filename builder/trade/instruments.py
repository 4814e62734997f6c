"""How sure an instrument is, and what a reading near a limit is worth.

In: the range, the resolution and the error of a tool, as `kb/tools.yml` has them. Out: how far a
reading may be off, whether a limit is finer than the tool can tell, and which side of it a reading
is on, if that is certain. A reading proves a side only when it clears the limit by more than the
possible error (the guard band of ISO 14253-1 and JCGM 106:2012, from memory).
"""

import re
from dataclasses import dataclass
from decimal import Decimal

from builder.trade.mistake import Mistake

BELOW, ABOVE, TOO_CLOSE_TO_CALL = "below", "above", "too close to call"

_PIECES = {
    "percent": re.compile(r"([0-9]+(?:\.[0-9]+)?)\s*%"),
    "digits": re.compile(r"([0-9]+)\s*digits?"),
    "fixed": re.compile(r"([0-9]+(?:\.[0-9]+)?)"),
}


@dataclass(frozen=True, slots=True)
class Accuracy:
    """Possible error: percent of the reading, plus so many last digits, plus a fixed amount."""

    percent: Decimal = Decimal(0)
    digits: Decimal = Decimal(0)  # counts of the last place shown: needs the resolution
    fixed: Decimal = Decimal(0)  # in the unit of the reading


@dataclass(frozen=True, slots=True)
class Instrument:
    """What a tool reads in one unit."""

    unit: str
    low: Decimal
    high: Decimal
    resolution: Decimal | None = None  # the smallest step it shows
    accuracy: Accuracy | None = None


def parse_accuracy(text: str) -> Accuracy | Mistake:
    """Read `0.5 % + 0.02`, `1 % + 3 digits`, `0.02`: each kind of piece once, joined by +."""
    parts: dict[str, Decimal] = {}
    for piece in text.replace("±", "").strip(" ()").split("+"):
        matches = ((kind, shape.fullmatch(piece.strip())) for kind, shape in _PIECES.items())
        kind, match = next(((kind, match) for kind, match in matches if match), ("", None))
        if match is None:
            shown = piece.strip() or text
            return Mistake(f"{shown} is no error: write 0.5 % + 0.02 or 1 % + 3 digits")
        if kind in parts:
            return Mistake(f"{text} gives the same kind of error twice")
        parts[kind] = Decimal(match[1])
    return Accuracy(**parts)


def error_of(instrument: Instrument, reading: Decimal) -> Decimal:
    """Return how far a reading may be off, in its unit; without a stated error, one step."""
    step = instrument.resolution or Decimal(0)
    stated = instrument.accuracy
    if stated is None:
        return step
    return abs(reading) * stated.percent / 100 + stated.digits * step + stated.fixed


def side_of_limit(instrument: Instrument, reading: Decimal, limit: Decimal) -> str:
    """Return the side of a limit that the true value is on: BELOW, ABOVE, or TOO_CLOSE_TO_CALL."""
    error = error_of(instrument, reading)
    if abs(reading - limit) <= error:
        return TOO_CLOSE_TO_CALL
    return BELOW if reading < limit else ABOVE


def too_fine(instrument: Instrument, limit: Decimal) -> str | None:
    """Explain why a limit is finer than the instrument can resolve; None when it isn't."""
    unit, step = instrument.unit, instrument.resolution
    if not instrument.low <= limit <= instrument.high:
        return f"it reads {instrument.low} to {instrument.high} {unit}, not {limit} {unit}"
    if step and limit % step:
        return f"it shows steps of {step} {unit}, so {limit} {unit} never appears"
    error = error_of(instrument, limit)
    if limit and abs(limit) <= error:
        off = f"{error.normalize():f} {unit}"
        return f"at {limit} {unit} it may be off by {off}, which hides the limit"
    return None


def too_narrow(instrument: Instrument, low: Decimal, high: Decimal) -> str | None:
    """Explain why no reading can prove that a value is between two limits; None when one can."""
    error = error_of(instrument, high)
    if high - low > 2 * error:
        return None
    return (
        f"it may be off by {error.normalize():f} {instrument.unit} either way: no reading is sure"
    )
