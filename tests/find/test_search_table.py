"""What the search takes from the library."""

from dataclasses import replace

from builder.find.search_table import TreeRow, search_table
from builder.model.library import Library


def rows(library: Library) -> list[TreeRow]:
    """Return the rows of all trees that name a lamp."""
    named = {id_ for id_, tree in library.trees.items() if tree.symptom.lamps}
    return [row for row in search_table(library).trees if row.id in named]


def test_a_tree_has_its_system_and_its_lamps_by_their_places(shop: Library) -> None:
    """Those that the shop has no entry for are left out; the check has told of them."""
    table = search_table(shop)
    assert rows(shop)
    for row in rows(shop):
        tree = shop.trees[row.id]
        assert [table.lamps[at].id for at in row.lamps] == [*map(str, tree.symptom.lamps)]
        assert table.systems[row.system].id == str(tree.system)
    bare = rows(replace(shop, lamps={}, systems={}))
    assert {(row.lamps, row.system) for row in bare} == {((), -1)}
