"""Sheets for `baytree print`: which ones are asked for, and each as a file.

In: what the command line asked for. Out: the sheets of one tree after another, by their file
names, made on all cores.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import partial

from builder.cores.spread import on_all_cores
from builder.graph.runs import procedure_named
from builder.model.library import Library, NotThereError
from builder.model.summary import TreeSummary
from builder.model.tree import Status, Tree
from builder.plan.entry_numbers import with_entry_numbers
from builder.prints.book import book
from builder.prints.paper import wall_paper
from builder.prints.sheets import SHEETS, PrintedFile, PrintRequest
from builder.prints.wall import Wall, wall_layout

ReadTree = Callable[[str], Tree]


def tree_ids(request: PrintRequest, library: Library) -> tuple[str, ...]:
    """Return the trees and procedures whose sheets are asked for. Raises NotThereError."""
    if request.system and request.system not in library.systems:
        raise NotThereError(f"there is no system `{request.system}` in kb/systems.yml")
    for id_ in request.trees:
        if id_ not in library.trees and not procedure_named(library, id_):
            raise NotThereError(f"there is no tree `{id_}` in trees/")
    if request.every:
        procedures = (one.tree.id for one in library.procedures.values())
        return (*(tree.id for tree in _in_use(library)), *procedures)
    of_system = (tree.id for tree in _in_use(library) if tree.system == request.system)
    return (*request.trees, *of_system)


def _in_use(library: Library) -> Iterator[TreeSummary]:
    """Retired trees keep their page but leave the prints."""
    return (tree for tree in library.trees.values() if tree.status is not Status.RETIRED)


def print_trees(
    ids: Sequence[str], request: PrintRequest, library: Library, read_tree: ReadTree
) -> Iterator[tuple[PrintedFile, ...]]:
    """Yield the files of each tree in turn; a book is one file, which comes with the last tree.

    Each tree is read once, where its sheets are made. Raises NotThereError.
    """
    library = with_entry_numbers(library, read_tree)
    if request.system and request.sheet == "wall":
        yield from _book(ids, request, library, read_tree)
    else:
        yield from on_all_cores(partial(_files_of_tree, request, library, read_tree), ids)


def _book(
    ids: Sequence[str], request: PrintRequest, library: Library, read_tree: ReadTree
) -> Iterator[tuple[PrintedFile, ...]]:
    walls = []
    for wall in on_all_cores(partial(_wall, request, library, read_tree), ids):
        walls.append(wall)
        if len(walls) < len(ids):
            yield ()
    yield ((f"{request.system}.pdf", book(walls, request.system, library, request.paper)),)


def _wall(request: PrintRequest, library: Library, read_tree: ReadTree, id_: str) -> Wall:
    paper = wall_paper(request.paper, library.shop.paper)
    return wall_layout(read_tree(id_), library, paper, request.distance)


def _files_of_tree(
    request: PrintRequest, library: Library, read_tree: ReadTree, id_: str
) -> tuple[PrintedFile, ...]:
    return tuple(SHEETS[request.sheet].print(read_tree(id_), library, request))
