"""The pages and the prints of the trees: only those are made on which something changed.

In: a work folder, the library, a reader of single trees. Out: pages and PDFs in the work folder.
"""

from collections.abc import Callable, Container
from dataclasses import replace
from functools import partial

from builder.cache.digest import digest
from builder.cores.progress import Progress, counted, no_progress
from builder.cores.spread import on_all_cores
from builder.model.library import Library
from builder.model.summary import Summary
from builder.model.tree import Status, Tree
from builder.pages import addresses
from builder.pages.analysis import analyze_tree
from builder.pages.page import Page, TreePrint
from builder.pages.related import related_trees
from builder.pages.tree import tree_page
from builder.prints.bench import bench_sheet
from builder.prints.wall import wall_chart
from builder.site.page_cache import Work, is_fresh, put

PRINTS: tuple[tuple[TreePrint, Callable[[Tree, Library], bytes]], ...] = (
    (TreePrint("Wall chart", ""), wall_chart),
    (TreePrint("Bench sheet", "-bench"), bench_sheet),
)


Near = tuple[Summary, ...]  # trees that a page names as near its own


def put_trees(
    work: Work,
    library: Library,
    read_tree: Callable[[str], Tree],
    *,
    prints: bool,
    leave_out: Container[str] = (),
    progress: Progress = no_progress,
) -> None:
    """Make the page and the prints of every tree that is in use."""
    offered = [one for one, _ in PRINTS] if prints else []
    nearest = related_trees(library.trees.values())
    stale: list[tuple[Summary, Near]] = []
    for id_, of in library.trees.items():
        if of.status is Status.RETIRED or id_ in leave_out:
            continue
        near = tuple(library.trees[other] for other in nearest[id_])
        if not is_fresh(work, addresses.tree_path(id_), _key(library, of, near, offered)):
            stale.append((of, near))
    made = on_all_cores(partial(_made, library, read_tree, prints), stale)
    what = "Making pages and sheets of trees" if prints else "Making pages of trees"
    for page, key, files in counted(made, progress, what, len(stale)):
        put(work, page, key, files)


def _made(
    library: Library, read_tree: Callable[[str], Tree], prints: bool, one: tuple[Summary, Near]
) -> tuple[Page, str, dict[str, bytes]]:
    """Make the page of a tree, its key, and the tree's prints by their addresses."""
    of, near = one
    tree = read_tree(of.id)
    made = PRINTS if prints else ()
    offered = [one for one, _ in made]
    # The file may have been saved since it was summed up: the key is of what the page shows.
    key = _key(library, replace(of, revision=tree.revision), near, offered)
    page = tree_page(tree, library, analyze_tree(tree, library), near, offered)
    files = {addresses.print_path(of.id, one.suffix): make(tree, library) for one, make in made}
    return page, key, files


def _key(library: Library, of: Summary, near: tuple[Summary, ...], prints: list[TreePrint]) -> str:
    """Hash what stands on a tree's page; of other trees that is titles and numbers of steps."""
    others = sorted({over.tree for over in of.hand_overs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    into = [f"{over.tree}#{over.step}" for over in of.hand_overs if over.step]
    numbers = [library.entries.get(entry) for entry in into]
    return digest(of.revision, titles, numbers, [(tree.id, tree.title) for tree in near], prints)
