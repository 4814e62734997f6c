"""Sheets for `baytree print`: which ones are asked for, and each as a file.

In: what the command line asked for. Out: one PDF after another by its file name, so that the
command can show how far it is.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial

from builder.model.library import Library, NotThereError
from builder.model.summary import Summary
from builder.model.tree import Fix, Status, Tree
from builder.plan.entries import with_entries
from builder.prints.bench import bench_sheet
from builder.prints.book import book
from builder.prints.customer import customer_sheet
from builder.prints.wall import wall_chart


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be printed."""

    trees: tuple[str, ...] = ()
    system: str = ""  # a book of all its trees
    every: bool = False
    sheet: str = "wall"  # wall | bench | customer
    paper: str = ""  # "" for the shop's
    distance: float | None = None  # meters
    fix: str = ""  # for the customer's sheet; "" for every fix of the tree


ReadTree = Callable[[str], Tree]
Job = tuple[str, Callable[[], bytes]]  # a file name, and what makes it


def jobs(wanted: Wanted, library: Library, read_tree: ReadTree) -> tuple[Job, ...]:
    """Return every sheet that is asked for; none is made before it is called."""
    if wanted.system and wanted.system not in library.systems:
        raise NotThereError(f"there is no system `{wanted.system}` in kb/systems.yml")
    library = with_entries(library, read_tree)
    if wanted.system and wanted.sheet == "wall":
        return (_book(wanted, library, read_tree),)
    return tuple(
        job for id_ in _ids(wanted, library) for job in _of_tree(wanted, library, read_tree, id_)
    )


def _ids(wanted: Wanted, library: Library) -> tuple[str, ...]:
    if wanted.every:
        return tuple(tree.id for tree in _in_use(library))
    of_system = (tree.id for tree in _in_use(library) if tree.system == wanted.system)
    return (*wanted.trees, *of_system)


def _in_use(library: Library) -> Iterator[Summary]:
    """Retired trees keep their page but leave the prints."""
    return (tree for tree in library.trees.values() if tree.status is not Status.RETIRED)


def _book(wanted: Wanted, library: Library, read_tree: ReadTree) -> Job:
    ids = _ids(wanted, library)

    def make() -> bytes:
        trees = map(read_tree, ids)
        return book(trees, wanted.system, library, wanted.paper, wanted.distance)

    return f"{wanted.system}.pdf", make


def _of_tree(wanted: Wanted, library: Library, read_tree: ReadTree, id_: str) -> Iterator[Job]:
    tree = read_tree(id_)
    match wanted.sheet:
        case "bench":
            yield f"{id_}.bench.pdf", lambda: bench_sheet(tree, library, wanted.paper)
        case "customer":
            for name in _fixes(tree, wanted.fix):
                yield (
                    f"{id_}.{name}.pdf",
                    partial(customer_sheet, tree, name, library, wanted.paper),
                )
        case _:
            yield (f"{id_}.pdf",
                   lambda: wall_chart(tree, library, wanted.paper, wanted.distance))  # fmt: skip


def _fixes(tree: Tree, wanted: str) -> list[str]:
    there = [name for name, step in tree.steps.items() if isinstance(step.body, Fix)]
    if wanted and wanted not in there:
        raise NotThereError(f"`{wanted}` is no fix of {tree.id}; there are {', '.join(there)}")
    return [wanted] if wanted else there
