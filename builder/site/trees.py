"""The pages and the prints of the trees: only those are made on which something changed.

In: a work folder, the library, a reader of single trees. Out: pages and PDFs in the work folder.
"""

from collections.abc import Callable, Container
from dataclasses import replace

from builder.cache.digest import digest
from builder.model.library import Library
from builder.model.summary import Summary
from builder.model.tree import Tree
from builder.pages import addresses
from builder.pages.analysis import analyze_tree
from builder.pages.page import TreePrint
from builder.pages.related import related_trees
from builder.pages.tree import tree_page
from builder.prints.bench import bench_sheet
from builder.prints.wall import wall_chart
from builder.site.work import Work, is_fresh, put

PRINTS: tuple[tuple[TreePrint, Callable[[Tree, Library], bytes]], ...] = (
    (TreePrint("Wall chart", ""), wall_chart),
    (TreePrint("Bench sheet", "-bench"), bench_sheet),
)


def put_trees(
    work: Work,
    library: Library,
    read_tree: Callable[[str], Tree],
    *,
    prints: bool,
    leave_out: Container[str] = (),
) -> None:
    """Make the page and the prints of every tree that is in use."""
    made = PRINTS if prints else ()
    nearest = related_trees(library.trees.values())
    for id_, of in library.trees.items():
        if of.status == "retired" or id_ in leave_out:
            continue
        near = tuple(library.trees[other] for other in nearest[id_])
        offered = [one for one, _ in made]
        if is_fresh(work, addresses.tree_path(id_), _key(library, of, near, offered)):
            continue
        tree = read_tree(id_)
        # The file may have been saved since it was summed up: the key is of what the page shows.
        key = _key(library, replace(of, revision=tree.revision), near, offered)
        page = tree_page(tree, library, analyze_tree(tree, library), near, offered)
        files = {addresses.print_path(id_, one.suffix): make(tree, library) for one, make in made}
        put(work, page, key, files)


def _key(library: Library, of: Summary, near: tuple[Summary, ...], prints: list[TreePrint]) -> str:
    """Hash what stands on a tree's page; of other trees that is titles and numbers of steps."""
    others = sorted({over.tree for over in of.hand_overs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    into = [f"{over.tree}#{over.step}" for over in of.hand_overs if over.step]
    numbers = [library.entries.get(entry) for entry in into]
    return digest(of.revision, titles, numbers, [(tree.id, tree.title) for tree in near], prints)
