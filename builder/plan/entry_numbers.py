"""The numbers of the steps that other trees hand off to.

In: a library, and a reader of single trees. Out: the library with those numbers. A tree is read
only if another tree hands off to a step of it whose number the library doesn't have.
"""

from collections.abc import Callable
from dataclasses import replace

from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering


def with_entry_numbers(library: Library, read_tree: Callable[[str], Tree | None]) -> Library:
    """Number the steps that handoffs lead to; on paper a step has only its number."""
    entry_numbers = dict(library.entry_numbers)
    for id_, callers in library.callers.items():
        steps = {step for _, step in callers if step and f"{id_}#{step}" not in entry_numbers}
        tree = read_tree(id_) if steps and id_ in library.trees else None
        numbers = numbering(tree) if tree else {}
        entry_numbers |= {f"{id_}#{step}": numbers[step] for step in steps if step in numbers}
    return replace(library, entry_numbers=entry_numbers)
