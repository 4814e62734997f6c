"""Ranges of readings in words.

In: two cuts of a walk's table, a unit. Out: `13.2 to 14.8 V`, `0.4 V or less`.
"""

from decimal import Decimal

from builder.model.ranges import Cut, Range
from builder.trade.units import find_unit
from builder.walk.rows import CutPair
from builder.wording.value_text import spoken_limit


def limit_text(cuts: CutPair, unit: str = "") -> str:
    """Write a range, with its unit if one is given."""
    (low, low_after), (high, high_after) = cuts
    if str(low).endswith("Infinity"):
        words = f"{'at most' if high_after else 'below'} {high}"
    elif str(high).endswith("Infinity"):
        words = f"{'above' if low_after else 'at least'} {low}"
    else:
        words = f"{low} to {high}"
    return spoken_limit(with_unit(words, unit))


def with_unit(words: str, unit: str) -> str:
    """Add a unit as it is printed: Ω for ohm."""
    known = find_unit(unit)
    label = known.label if known else unit
    return f"{words}{'' if label == '°' else ' '}{label}".strip()


def is_within(value: str, cuts: CutPair) -> bool:
    """Whether a recorded value is in a range; OL is above every number."""
    low, high = (Cut(Decimal(end), bool(after)) for end, after in cuts)
    return Range(low, high).contains(Decimal("Infinity" if value == "OL" else value))
