"""A word of a procedure that was renamed in `returns` only.

In: a procedure. Out: the word in `returns` that no step returns, with the places where its steps
return the one other word that isn't listed.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.routes import exits
from builder.graph.runs import procedures_named
from builder.model.ends import Return
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.model.text import Text
from builder.model.tree import Status
from builder.model.typing_slip import is_typing_slip


@dataclass(frozen=True, slots=True)
class RenamedWord:
    """The new word in `returns`, and the old one wherever it is returned."""

    new: Text
    old: tuple[Text, ...]


def returned_words(procedure: Procedure) -> Iterator[Text]:
    """Yield every word that a step of the procedure returns, in the order of the steps."""
    for step in procedure.tree.steps.values():
        if isinstance(step.body, Return):
            yield step.text
        yield from (exit_.branch.text for exit_ in exits(step) if exit_.branch.returns)


def renamed_word(procedure: Procedure) -> RenamedWord | None:
    """Return the one word that has another name in `returns`; None where it was only mistyped."""
    returned = [*returned_words(procedure)]
    old = tuple(word for word in returned if word not in procedure.returns)
    new = [word for word in procedure.returns if word not in returned]
    if procedure.tree.broken or len(new) != 1 or len(set(old)) != 1:
        return None
    return None if is_typing_slip(old[0], new[0]) else RenamedWord(new[0], old)


def callers_of(library: Library, name: str) -> Iterator[str]:
    """Yield the trees and the other procedures that run a procedure."""
    for listing in library.listings.values():
        if name in listing.procedures and listing.status is not Status.RETIRED:
            yield listing.id
    for procedure in library.procedures.values():
        if name in procedures_named(procedure.tree):
            yield procedure.tree.id
