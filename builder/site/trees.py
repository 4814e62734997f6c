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
from builder.pages.facts import facts_of
from builder.pages.page import Page, Print
from builder.pages.related import related
from builder.pages.tree import tree_page
from builder.prints.bench import bench_sheet
from builder.prints.wall import wall_chart
from builder.site.work import Work, is_fresh, put

PRINTS: tuple[tuple[Print, Callable[[Tree, Library], bytes]], ...] = (
    (Print("Wall chart", ""), wall_chart),
    (Print("Bench sheet", "-bench"), bench_sheet),
)


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
    nearest = related(library.trees.values())
    stale: dict[str, tuple[Summary, ...]] = {}
    for id_, of in library.trees.items():
        if of.status is Status.RETIRED or id_ in leave_out:
            continue
        near = tuple(library.trees[other] for other in nearest[id_])
        if not is_fresh(work, addresses.tree(id_), _key(library, of, near, offered)):
            stale[id_] = near
    made = on_all_cores(partial(_made, library, read_tree, prints), stale.items())
    what = "Making pages and sheets of trees" if prints else "Making pages of trees"
    for (id_, near), (revision, page, files) in zip(
        stale.items(), counted(made, progress, what, len(stale)), strict=True
    ):
        # The file may have been saved since it was summed up: the key is of what the page shows.
        shown = replace(library.trees[id_], revision=revision)
        put(work, page, _key(library, shown, near, offered), files)


def _made(
    library: Library,
    read_tree: Callable[[str], Tree],
    prints: bool,
    one: tuple[str, tuple[Summary, ...]],
) -> tuple[str, Page, dict[str, bytes]]:
    """Make the page of a tree beside those that are near it, and its prints by their addresses."""
    id_, near = one
    tree = read_tree(id_)
    sheets = PRINTS if prints else ()
    page = tree_page(tree, library, facts_of(tree, library), near, [name for name, _ in sheets])
    files = {addresses.print_(id_, name.suffix): make(tree, library) for name, make in sheets}
    return tree.revision, page, files


def _key(library: Library, of: Summary, near: tuple[Summary, ...], prints: list[Print]) -> str:
    """Hash what stands on a tree's page; of other trees that is titles and numbers of steps."""
    others = sorted({over.tree for over in of.hand_overs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    into = [f"{over.tree}#{over.step}" for over in of.hand_overs if over.step]
    numbers = [library.entries.get(entry) for entry in into]
    return digest(of.revision, titles, numbers, [(tree.id, tree.title) for tree in near], prints)
