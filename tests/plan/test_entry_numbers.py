"""Steps that other trees hand off to have the numbers of their own sheets."""

from pathlib import Path

from builder.check.unchecked_library import read_library
from builder.model.tree import Tree
from builder.plan.entry_numbers import with_entry_numbers
from builder.plan.numbering import numbering
from builder.reader.trees import read_tree

SHOP = Path(__file__).parents[1] / "shop"


def test_only_the_trees_with_such_a_step_are_read() -> None:
    """A large shop is not read again for a few numbers."""
    library = read_library(SHOP)[0]
    seen: dict[str, Tree] = {}

    def reader(id_: str) -> Tree | None:
        tree = read_tree(SHOP, SHOP / "trees" / f"{id_}.yml")[0]
        if tree:
            seen[id_] = tree
        return tree

    entries = with_entry_numbers(library, reader).entry_numbers
    assert entries
    assert set(seen) == {entry.partition("#")[0] for entry in entries}
    for entry, number in entries.items():
        tree, _, step = entry.partition("#")
        assert numbering(seen[tree])[step] == number
