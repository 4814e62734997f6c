"""An entry of `kb/` that has a new name there, while all that names it still has the old one.

In: findings, the library, and what the trees look up. Out: one finding at such an entry, and those
that it caused, which wait.
"""

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping

from builder.model.finding import Finding, Related
from builder.model.library import Library
from builder.model.text import Position
from builder.rules.catalog import RULES
from builder.rules.shared.close_names import KINDS, closest_names

FEWEST = 2  # places; one may be mistyped
SHOWN = 2
CAUSED = {"procedure-values"} | {f"no-such-{kind}" for kind in KINDS}
BY_NAME = {rule.RULE.name: rule.RULE for rule in RULES}
Used = Collection[tuple[str, str]]  # kind and ID


def renamed_entries(
    findings: Iterable[Finding], library: Library, used: Used
) -> tuple[list[Finding], list[Finding]]:
    """Return the findings at entries that were most likely renamed, and what they cause.

    The rules quote the name as it's written: the first thing in backquotes.
    """
    by_name: dict[str, list[Finding]] = defaultdict(list)
    for one in findings:
        if one.rule in CAUSED and "`" in one.message:
            by_name[one.message.split("`")[1]].append(one)
    causes: list[Finding] = []
    caused: list[Finding] = []
    for name, places in by_name.items():
        rule = next((one.rule for one in places if one.rule.startswith("no-such-")), "")
        kind = rule.removeprefix("no-such-")
        if len(places) >= FEWEST and (found := _new_name(name, kind, library, used)):
            causes.append(_finding(rule, name, found, places))
            caused += places
    return causes, caused


def _new_name(name: str, kind: str, library: Library, used: Used) -> tuple[str, Position] | None:
    """Return the one entry like it that no tree names, and where it is."""
    field = KINDS[kind][0] if kind in KINDS else ""
    entries: Mapping[str, object] = getattr(library, field) if field else {}
    close = closest_names(name, entries)
    unused = [one for one in close if (field, one) not in used]
    at = _place(entries[unused[0]]) if len(unused) == 1 else None
    return (unused[0], at) if at else None


def _place(entry: object) -> Position | None:
    at = getattr(getattr(entry, "id", None), "at", None) or getattr(entry, "at", None)
    return at if isinstance(at, Position) else None


def _finding(rule: str, name: str, found: tuple[str, Position], places: list[Finding]) -> Finding:
    new, at = found
    files = list(dict.fromkeys(one.at.file for one in places))
    return BY_NAME[rule].finding(
        at,
        f"no tree names `{new}`, and {len(places)} places in {len(files)} "
        f"file{'s name' if len(files) > 1 else ' name'} `{name}`, which doesn't exist",
        places[0].why,
        f"if you renamed it, write `{new}` there too: {', '.join(files)}; "
        f"if not, give it the name `{name}` again",
        *(Related(one.at, "one of the places") for one in places[:SHOWN]),
    )
