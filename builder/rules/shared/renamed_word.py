"""A word of a procedure that was renamed in `returns` only.

In: a procedure. Out: the word in `returns` that no step returns, with the places where its steps
return the one other word that isn't listed.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.routes import exits
from builder.graph.runs import handled_words
from builder.model.ends import Return
from builder.model.library import Library
from builder.model.procedures import Procedure
from builder.model.text import Text


@dataclass(frozen=True, slots=True)
class RenamedWord:
    """The new word in `returns`, and the old one wherever it is returned."""

    new: Text
    old: tuple[Text, ...]
    callers: tuple[str, ...]  # what has a result for the old one


def returned_words(procedure: Procedure) -> Iterator[Text]:
    """Yield every word that a step of the procedure returns, in the order of the steps."""
    for step in procedure.tree.steps.values():
        if isinstance(step.body, Return):
            yield step.text
        yield from (exit_.branch.text for exit_ in exits(step) if exit_.branch.returns)


def renamed_word(library: Library, procedure: Procedure) -> RenamedWord | None:
    """Return the one word that has another name in `returns`, if what runs it knows the old one."""
    returned = [*returned_words(procedure)]
    old = tuple(word for word in returned if word not in procedure.returns)
    new = [word for word in procedure.returns if word not in returned]
    if procedure.tree.broken or len(new) != 1 or len(set(old)) != 1:
        return None
    callers = tuple(_callers(library, procedure.name, str(old[0])))
    return RenamedWord(new[0], old, callers) if callers else None


def _callers(library: Library, name: str, word: str) -> Iterator[str]:
    """Yield the trees and the procedures that have a result for a word of a procedure."""
    for id_, listing in library.listings.items():
        if name in listing.procedures and (name, word) in library.trees[id_].handled:
            yield id_
    for procedure in library.procedures.values():
        if (name, word) in handled_words(procedure.tree):
            yield procedure.tree.id
