"""Hazards in the order in which people must read them.

In: hazards. Out: the same, most severe first.
"""

from collections.abc import Iterable

from builder.model.knowledge import Hazard, Signal

SIGNAL_ORDER: tuple[Signal, ...] = tuple(Signal)  # most severe first


def by_severity(hazards: Iterable[Hazard]) -> list[Hazard]:
    """Sort hazards by their signal words, most severe first, as ANSI Z535.4 ranks them."""
    return sorted(hazards, key=lambda hazard: SIGNAL_ORDER.index(hazard.signal))
