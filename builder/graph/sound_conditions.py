"""The conditions that can be relied on.

In: the library. Out: its conditions, or none while one of them has a mistake of text: what follows
from that mistake would only distract from it.
"""

from builder.model.conditions import Condition, Conditions
from builder.model.library import Library


def sound_conditions(library: Library) -> tuple[Condition, ...]:
    """Return the conditions if every one of them could be read."""
    conditions = tuple(library.conditions.values())
    return () if any(one.broken for one in conditions) else conditions


def conditions_for(library: Library) -> Conditions:
    """Return them by id."""
    return {str(one.id): one for one in sound_conditions(library)}
