"""Names that don't exist, and what the author may have meant.

In: a name and the names that exist. Out: a hint for a finding, the edit that follows it, or the
finding with both.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches

from builder.model.finding import Edit, Finding, edit_of
from builder.model.text import Text
from builder.model.typing_slip import slip_of
from builder.rules.shared.rule import Rule

WORD = re.compile(r"[a-z0-9]+")
MAX_NAMES = 16  # listed in one hint


def closest_names(name: str, known: Iterable[str]) -> list[str]:
    """Return up to three names that look like it, closest first, ignoring case."""
    by_folded = {other.casefold(): other for other in known}
    matches = get_close_matches(name.casefold(), by_folded, cutoff=0.6)
    return [by_folded[match] for match in matches]


def names_meant(words: Iterable[str], known: Iterable[str]) -> set[str]:
    """Return the known names that a word which is none of them may be a slip of."""
    names = list(known)
    return {near for word in words if word not in names for near in closest_names(word, names)}


def suggestion(name: str, known: Iterable[str], otherwise: str) -> str:
    """Suggest the closest names; where none is close, what else to do, and all names if few."""
    names = sorted(map(str, known))
    if close := closest_names(name, names) or _sharing_a_word(name, names):
        return f"did you mean {' or '.join(f'`{other}`' for other in close)}?"
    if 0 < len(names) <= MAX_NAMES:
        return f"{otherwise}; known: {', '.join(f'`{other}`' for other in names)}"
    return otherwise


def _sharing_a_word(name: str, names: Iterable[str]) -> list[str]:
    """Return up to three names that have a word of this one: `amp clamp`, `high-current-clamp`."""
    words = {word for word in WORD.findall(name.casefold()) if len(word) > 3}
    return [one for one in names if words & {*WORD.findall(one.casefold())}][:3]


def mistyped(name: str, known: Iterable[str]) -> str | None:
    """Return the one close name, where the author only mistyped it."""
    close = closest_names(name, map(str, known))
    return slip_of(name, close) if len(close) == 1 else None


def slip_edit(name: Text, known: Iterable[str]) -> Edit | None:
    """Return the edit that writes the one close name, where the author only mistyped it."""
    meant = mistyped(name, known)
    return edit_of(name, meant) if meant else None


def unknown_names(
    rule: Rule, names: Iterable[Text], known: Mapping[str, object], why: str, where: str
) -> Iterator[Finding]:
    """Yield a finding for every name that is unknown; `where` is where such names are kept."""
    kind = rule.name.removeprefix("no-such-")
    for name in names:
        if name not in known:
            hint = suggestion(name, known, f"add it to {where}, or use a name from there")
            edit = slip_edit(name, known)
            yield rule.finding(name.at, f"{kind} `{name}` doesn't exist", why, hint, edit=edit)
