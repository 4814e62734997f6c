"""Trees with a new name, so that an open page at the old address finds the new one.

In: the library before and after a save, and what had moved before. Out: the new ID of each old one.
"""

from collections.abc import Mapping

from builder.model.library import Library
from builder.model.summary import TreeListing


def moved_trees(before: Library, now: Library, known: Mapping[str, str]) -> dict[str, str]:
    """Return where each tree went; one that is back under its old name went nowhere.

    A tree has moved if it is gone, and a new one has the same steps. Steps are enough: a new name
    often comes with a new system and a new title.
    """
    old, new = before.listings, now.listings
    added = [listing for id_, listing in new.items() if id_ not in old]
    gone = [listing for id_, listing in old.items() if id_ not in new]
    moved = {**known, **{one.id: to for one in gone if (to := _same_steps(one, added))}}
    return {id_: _last(moved, id_) for id_ in moved if id_ not in new}


def _same_steps(tree: TreeListing, added: list[TreeListing]) -> str:
    return next((other.id for other in added if other.steps == tree.steps), "")


def _last(moved: Mapping[str, str], id_: str) -> str:
    """Follow a tree that moved several times."""
    followed = {id_}
    while id_ in moved and moved[id_] not in followed:
        id_ = moved[id_]
        followed.add(id_)
    return id_
