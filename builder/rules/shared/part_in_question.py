"""Whether what a step hands to a procedure is what its question asks about.

In: the facts of a tree, and a step that runs a procedure. Out: the value that is another part than
the question names, or the same part at both ends of a wire.
"""

import re
from collections.abc import Iterator
from typing import NamedTuple

from builder.model.library import Library
from builder.model.module_record import Module
from builder.model.text import Text
from builder.model.vehicle_data import VehiclePart
from builder.rules.shared.part_hint import is_part
from builder.rules.shared.procedure_steps import Running

LONG = 4  # letters; a shorter name may be part of another word


class OddPart(NamedTuple):
    """A part that can't be meant."""

    value: Text
    message: str
    hint: str


def odd_parts(library: Library, running: Running) -> Iterator[OddPart]:
    """Yield the parts that a step hands over and can't mean."""
    given = [one for one in running.check.with_.values() if is_part(one, library)]
    if len(given) > 1 and len({*map(str, given)}) == 1:
        yield OddPart(given[1], f"both ends are `{given[1]}`", "write the part at the other end")
    elif len(given) == 1 and (named := _named(library, running, given[0])):
        message = f"`{running.step.text}` is about `{named}`, and this hands over `{given[0]}`"
        yield OddPart(given[0], message, f"write `{named}`, or ask about `{given[0]}`")


def _named(library: Library, running: Running, given: Text) -> str | None:
    """Return the one part that the question names, where it doesn't name the one given."""
    question = running.step.text.casefold()
    own = library.parts.get(given) or library.modules[given]
    if _is_named(str(given), own, question):
        return None
    # Not looked up one by one: each of them would count as used.
    every: dict[str, VehiclePart | Module] = {**dict(library.parts.items())}
    every |= dict(library.modules.items())
    named = [
        id_ for id_, one in every.items() if any(_has(question, name) for name in _names(id_, one))
    ]
    return named[0] if len(named) == 1 else None


def _is_named(id_: str, one: VehiclePart | Module, question: str) -> bool:
    words = [word for word in id_.split("-") if len(word) >= LONG]
    return any(word in question for word in (*words, *_names(id_, one)))


def _names(id_: str, one: VehiclePart | Module) -> list[str]:
    names = (str(one.name), *map(str, one.also_called), id_.replace("-", " "))
    return [name.casefold() for name in names if len(name) >= LONG]


def _has(question: str, name: str) -> bool:
    return re.search(rf"\b{re.escape(name)}\b", question) is not None
