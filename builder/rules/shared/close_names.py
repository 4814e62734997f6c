"""Names that don't exist, and what the author may have meant.

In: a name and the names that exist. Out: a hint for a finding, the edit that follows it, or the
finding with both.
"""

from collections.abc import Iterable, Iterator, Sequence
from difflib import SequenceMatcher, get_close_matches

from builder.model.finding import Edit, Finding, edit_of
from builder.model.library import Library
from builder.model.text import Text
from builder.model.typing_slip import slip_of
from builder.rules.shared.opposites import is_opposite, words_of_name
from builder.rules.shared.rule import Rule

MAX_NAMES = 16  # listed in one hint
MOST_OFFERED = 4
ALMOST = 0.8  # how much of the spelling is the same where words in common needn't be looked at
# Where each kind of name is kept, by the field of the library that holds it, and the key of a step.
KINDS = {
    "tool": ("tools", "tools", "kb/tools.yml"),
    "hazard": ("hazards", "hazards", "kb/hazards.yml"),
    "state": ("conditions", "when", "kb/conditions.yml"),
    "procedure": ("procedures", "by", "kb/procedures/"),
    "spec": ("specs", "spec", "kb/specs.yml"),
    "article": ("how_tos", "how_to", "kb/how-to/ as a file"),
    "lamp": ("lamps", "lamps", "kb/lamps.yml"),
    "module": ("modules", "replaces", "kb/modules/ as a record"),
    "system": ("systems", "system", "kb/systems.yml"),
    "part": ("parts", "parts", "kb/parts.yml"),
}


def closest_names(name: str, known: Iterable[str]) -> list[str]:
    """Return up to three names that look like it, closest first, ignoring case; no opposite."""
    by_folded = {other.casefold(): other for other in known}
    matches = get_close_matches(name.casefold(), by_folded, cutoff=0.6)
    return [by_folded[match] for match in matches if not is_opposite(name, match)]


def names_meant(words: Iterable[str], known: Iterable[str]) -> set[str]:
    """Return the known names that a word which is none of them may be a slip of."""
    names = list(known)
    return {near for word in words if word not in names for near in closest_names(word, names)}


def suggestion(name: str, known: Iterable[str], otherwise: str) -> str:
    """Suggest the closest names; where none is close, what else to do, and all names if few."""
    names = sorted(map(str, known))
    if offered := _offered(name, names):
        return f"did you mean {' or '.join(f'`{other}`' for other in offered)}?"
    if 0 < len(names) <= MAX_NAMES:
        return f"{otherwise}; known: {', '.join(f'`{other}`' for other in names)}"
    return otherwise


def _offered(name: str, names: list[str]) -> list[str]:
    """Return names that look like it, also those with a word of it: `amp clamp`, `hose-clamp`."""

    def nearness(other: str) -> float:
        return SequenceMatcher(None, name.casefold(), other.casefold()).ratio()

    close = closest_names(name, names)
    if close and nearness(close[0]) >= ALMOST:
        return close
    words = {word for word in words_of_name(name) if len(word) > 3}
    sharing = [one for one in names if words & words_of_name(one) and not is_opposite(name, one)]
    sharing.sort(key=nearness, reverse=True)
    return list(dict.fromkeys((*sharing, *close)))[:MOST_OFFERED]


def step_meant(steps: Sequence[str]) -> str:
    """Offer the steps that nothing leads to, for a branch that is wrong."""
    names = " or ".join(f"`{step}`" for step in steps[:MOST_OFFERED])
    return f"nothing leads to the step {names} yet: if that is meant here, write its name"


def mistyped(name: str, known: Iterable[str]) -> str | None:
    """Return the one close name, where the author only mistyped it."""
    close = closest_names(name, map(str, known))
    return slip_of(name, close) if len(close) == 1 else None


def slip_edit(name: Text, known: Iterable[str]) -> Edit | None:
    """Return the edit that writes the one close name, where the author only mistyped it."""
    meant = mistyped(name, known)
    return edit_of(name, meant) if meant else None


def unknown_names(
    rule: Rule, names: Iterable[Text], library: Library, why: str
) -> Iterator[Finding]:
    """Yield a finding for every name of the rule's kind that is unknown."""
    kind = rule.name.removeprefix("no-such-")
    field, _, where = KINDS[kind]
    known = getattr(library, field)
    for name in names:
        if name not in known:
            hint = suggestion(name, known, f"add it to {where}, or use a name from there")
            hint = of_another_kind(name, library) or hint
            edit = slip_edit(name, known)
            yield rule.finding(name.at, f"{kind} `{name}` doesn't exist", why, hint, edit=edit)


def of_another_kind(name: str, library: Library) -> str | None:
    """Return where a name belongs that exists, but is that of something else; None for no name."""
    kinds = (kind for kind, (field, _, _) in KINDS.items() if name in getattr(library, field))
    kind = next((one for one in kinds if one not in ("lamp", "system")), None)  # plain words
    return f"`{name}` is the name of a {kind}: write it under `{KINDS[kind][1]}`" if kind else None
