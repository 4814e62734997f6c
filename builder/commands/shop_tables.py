"""The tables of a shop's walks, for the commands that walk.

In: the shop's folder. Out: `WalkTables` whose trees are read and compiled when they are needed.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path

from builder.cache.database import opened
from builder.check.filled_tree import tree_of
from builder.check.verdict import known_library
from builder.model.library import Library, NotThereError
from builder.model.tree import Tree
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.tree_rows import TreeTable
from builder.walk.walk_tables import WalkTables


class CompiledTrees(Mapping[str, TreeTable]):
    """The tables of a shop's trees by ID, each compiled when it is first needed."""

    def __init__(self, shop: Path, library: Library) -> None:
        """Take the folder of the shop and its library."""
        self.shop, self.library = shop, library
        self._tables: dict[str, TreeTable] = {}

    def __getitem__(self, id_: str) -> TreeTable:
        """Compile a tree. Raises NotThereError."""
        if id_ not in self._tables:
            self._tables[id_] = tree_table(self.tree(id_), self.library)
        return self._tables[id_]

    def tree(self, id_: str) -> Tree:
        """Read a tree. Raises NotThereError."""
        return tree_of(self.shop, self.library, id_)

    def __contains__(self, id_: object) -> bool:
        """Return whether there is such a tree."""
        return id_ in self.library.listings

    def __iter__(self) -> Iterator[str]:
        """Iterate over the IDs."""
        return iter(self.library.listings)

    def __len__(self) -> int:
        """Count the trees."""
        return len(self.library.listings)


def tables_of_shop(shop: Path, tree: str) -> tuple[WalkTables, CompiledTrees]:
    """Return the tables of a shop that has a tree. Raises NotThereError."""
    with opened(shop) as cache:
        library = known_library(shop, cache)
    trees = CompiledTrees(shop, library)
    if tree not in trees:
        raise NotThereError(f"there is no tree `{tree}` in {shop / 'trees'}")
    return walk_tables(library, trees), trees
