"""Names that do not exist, and what may have been meant.

In: a name and the names that there are. Out: a hint for a finding.
"""

from collections.abc import Iterable
from difflib import get_close_matches

MOST_LISTED = 8


def nearest(name: str, known: Iterable[str]) -> list[str]:
    """Return up to three names that look like it, nearest first, whatever their case."""
    folded = {one.casefold(): one for one in known}
    return [folded[near] for near in get_close_matches(name.casefold(), folded, cutoff=0.6)]


def offer(name: str, known: Iterable[str], otherwise: str) -> str:
    """Offer the nearest names; where none is near, what else to do, and the names if few."""
    names = sorted(map(str, known))
    if near := nearest(name, names):
        return f"did you mean {' or '.join(f'`{one}`' for one in near)}?"
    if 0 < len(names) <= MOST_LISTED:
        return f"{otherwise}; there are {', '.join(f'`{one}`' for one in names)}"
    return otherwise
