"""Answers that somebody typed freely on a walk, where a name of the shop could stand.

In: the tables, the library, the trees of a job, its answers. Out: the answers with the ID of the
part or module that one names; those of which nothing is known, for people to read.
"""

from collections.abc import Iterable, Mapping

from builder.model.library import Library
from builder.walk.walk_tables import WalkTables
from builder.wording.vehicle_words import part_named

_SPEC = "spec "  # begins the name of a limit that was looked up: numbers
Answers = Mapping[str, str | tuple[str, ...]]


def with_known_names(
    tables: WalkTables, library: Library, trees: Iterable[str], answers: Answers
) -> dict[str, str | tuple[str, ...]]:
    """Return answers with IDs in place of names; a choice that a tree gives stays as it is."""
    choices = _choices(tables, trees)

    def known(text: str) -> str:
        return text if text in choices else part_named(text, library) or text

    return {
        name: known(value) if isinstance(value, str) else tuple(map(known, value))
        for name, value in answers.items()
    }


def unknown_answers(
    tables: WalkTables, library: Library, trees: Iterable[str], answers: Answers
) -> dict[str, str]:
    """Return what is neither a choice, nor a part or module, nor a limit."""
    known = {*library.parts, *library.modules, *_choices(tables, trees)}
    unknown = {
        name: [one for one in ((value,) if isinstance(value, str) else value) if one not in known]
        for name, value in answers.items()
        if not name.startswith(_SPEC)
    }
    return {name: ", ".join(texts) for name, texts in unknown.items() if texts}


def _choices(tables: WalkTables, trees: Iterable[str]) -> set[str]:
    asks = (ask for tree in trees for ask in tables[tree].get("asks", {}).values())
    return {text for ask in asks for text in ask["one_of"]}
