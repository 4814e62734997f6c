"""The pages and the prints of the trees: only those are made on which something changed.

In: a work folder, the library, a reader of single trees. Out: pages and PDFs in the work folder.
"""

from collections.abc import Callable, Container

from builder.model.library import Library, Summary
from builder.model.tree import Tree
from builder.pages import addresses
from builder.pages.facts import facts_of
from builder.pages.related import related
from builder.pages.tree import tree_page
from builder.site.work import Work, digest, is_fresh, put


def put_trees(
    work: Work,
    library: Library,
    read_tree: Callable[[str], Tree],
    *,
    leave_out: Container[str] = (),
) -> None:
    """Make the page and the print of every tree that is in use."""
    nearest = related(library.trees.values())
    for id_, tree in library.trees.items():
        if tree.status == "retired" or id_ in leave_out:
            continue
        near = tuple(library.trees[other] for other in nearest[id_])
        key = _key(library, tree, near)
        if not is_fresh(work, addresses.tree(id_), key):
            page = tree_page(whole := read_tree(id_), library, facts_of(whole, library), near)
            put(work, page, key)


def _key(library: Library, of: Summary, near: tuple[Summary, ...]) -> str:
    """Hash what stands on a tree's page; of other trees that is their titles alone."""
    others = sorted({over.tree for over in of.hand_overs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    return digest(of.revision, titles, [(tree.id, tree.title) for tree in near])
