"""The numbers of the steps that other trees hand off into.

In: a library, and a reader of single trees. Out: the library with those numbers; only trees are
read that are entered at a step whose number the library does not have.
"""

from collections.abc import Callable
from dataclasses import replace

from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering


def with_entries(library: Library, read_tree: Callable[[str], Tree | None]) -> Library:
    """Number the steps that handoffs lead to; on paper a step is found by its number alone."""
    found = dict(library.entry_numbers)
    for id_, callers in library.callers.items():
        steps = {step for _, step in callers if step and f"{id_}#{step}" not in found}
        tree = read_tree(id_) if steps and id_ in library.trees else None
        numbers = numbering(tree) if tree else {}
        found |= {f"{id_}#{step}": numbers[step] for step in steps if step in numbers}
    return replace(library, entry_numbers=found)
