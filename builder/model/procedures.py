"""Procedures: short trees that every tree can run, such as the proof of power and ground.

In: filled by the reader from `kb/procedures/`. Out: `Procedure`s in the library.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from builder.model.text import Text
from builder.model.tree import ProcedureRun, Tree

FOLDER = "procedures"  # the id of a procedure's tree begins with it


@dataclass(frozen=True, slots=True)
class Procedure:
    """A procedure; what it takes are the questions (`asks`) of its tree."""

    name: str
    tree: Tree  # its steps; the ends are `return`s, in a result or as a step
    returns: tuple[Text, ...]  # every word it can return, the one that passes first
    never_on: tuple[Text, ...] = ()  # parts that it must not be run on
    every_time: bool = False  # what it proved doesn't last: power may have been back since
    note: Text | None = None
    run: ProcedureRun | None = (
        None  # computed once all procedures are known; None if it runs itself
    )


Procedures = Mapping[str, Procedure]  # by name
