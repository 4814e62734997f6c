"""Sheets for `baytree print`: which ones are asked for, and each as a file.

In: what the command line asked for. Out: the sheets of one tree after another, by their file
names, made on all cores.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import partial

from builder.cores.spread import on_all_cores
from builder.graph.runs import procedure_named
from builder.graph.vehicle_lookup import names_vehicle
from builder.model.library import Library, NotThereError
from builder.model.summary import TreeSummary
from builder.model.tree import Status, Tree
from builder.model.vehicle_data import Vehicle
from builder.plan.entry_numbers import with_entry_numbers
from builder.prints.book import book
from builder.prints.on_vehicle import library_on_vehicle, tree_on_vehicle
from builder.prints.paper import wall_paper
from builder.prints.sheets import SHEETS, PrintedFile, PrintRequest
from builder.prints.wall_layout import Wall, wall_layout

ReadTree = Callable[[str], Tree]


def tree_ids(request: PrintRequest, library: Library) -> tuple[str, ...]:
    """Return the trees and procedures whose sheets are asked for. Raises NotThereError."""
    if request.system and request.system not in library.systems:
        raise NotThereError(f"there is no system `{request.system}` in kb/systems.yml")
    for id_ in request.trees:
        if id_ not in library.trees and not procedure_named(library, id_):
            raise NotThereError(f"there is no tree `{id_}` in trees/")
    in_use = [tree for tree in _in_use(library) if _is_for(tree, request.vehicle)]
    if request.every:
        procedures = (one.tree.id for one in library.procedures.values())
        return (*(tree.id for tree in in_use), *procedures)
    of_system = (tree.id for tree in in_use if tree.system == request.system)
    ids = (*request.trees, *of_system)
    return (*ids, *_run_by(ids, library)) if request.procedures else ids


def _run_by(ids: Sequence[str], library: Library) -> Iterator[str]:
    """Yield the procedures that trees run, each once, but for those that are asked for anyway."""
    listings = (library.listings[id_] for id_ in ids if id_ in library.listings)
    for name in sorted({name for listing in listings for name in listing.procedures}):
        if name in library.procedures and library.procedures[name].tree.id not in ids:
            yield library.procedures[name].tree.id


def _in_use(library: Library) -> Iterator[TreeSummary]:
    """Retired trees keep their page but leave the prints."""
    return (tree for tree in library.trees.values() if tree.status is not Status.RETIRED)


def _is_for(tree: TreeSummary, vehicle: Vehicle | None) -> bool:
    """Return whether a tree is for a vehicle, or for any."""
    return not vehicle or not tree.applies_to or names_vehicle(tree.applies_to, vehicle)


def print_trees(
    ids: Sequence[str], request: PrintRequest, library: Library, read_tree: ReadTree
) -> Iterator[tuple[PrintedFile, ...]]:
    """Yield the files of each tree in turn; a book is one file, which comes with the last tree.

    Each tree is read once, where its sheets are made. Raises NotThereError.
    """
    library = with_entry_numbers(library, read_tree)
    if request.vehicle:
        read_tree = partial(_read_on_vehicle, request.vehicle, library, read_tree)
        library = library_on_vehicle(library, request.vehicle)
    if request.system and request.sheet == "wall":
        yield from _book(ids, request, library, read_tree)
    else:
        yield from on_all_cores(partial(_files_of_tree, request, library, read_tree), ids)


def _read_on_vehicle(vehicle: Vehicle, library: Library, read_tree: ReadTree, id_: str) -> Tree:
    return tree_on_vehicle(read_tree(id_), library, vehicle)


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
