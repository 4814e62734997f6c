"""Names that do not exist, and what may have been meant.

In: a name and the names that there are. Out: a hint for a finding, or the finding.
"""

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches

from builder.model.finding import Finding
from builder.model.text import Text
from builder.rules.shared.rule import Rule

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


def unknown(
    rule: Rule, names: Iterable[Text], known: Mapping[str, object], why: str, where: str
) -> Iterator[Finding]:
    """Yield a finding for every name that is not known; `where` says where such names are kept."""
    what = rule.name.removeprefix("no-such-")
    for name in names:
        if name not in known:
            hint = offer(name, known, f"add it to {where}, or name one that is there")
            yield rule.finding(name.at, f"there is no {what} `{name}`", why, hint)
