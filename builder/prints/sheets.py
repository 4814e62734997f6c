"""Every sheet that can be printed of a tree, in one list.

In: a tree, the library, what is asked for. Out: the sheet's files. To add a sheet, write its module
and name it here: the command, the site and the tests go by this list. A sheet's module is imported
when one is printed: a build without prints doesn't load what writes PDFs.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches

from builder.model.ends import Fix
from builder.model.library import Library, NotThereError
from builder.model.tree import Tree
from builder.model.vehicle_data import Vehicle
from builder.walk.diagnosis import Diagnosis
from builder.walk.story import Story

PrintedFile = tuple[str, bytes]  # its name, and the PDF


@dataclass(frozen=True, slots=True)
class PrintRequest:
    """What is to be printed."""

    trees: tuple[str, ...] = ()
    system: str = ""  # a book of all its trees
    every: bool = False
    procedures: bool = False  # also the sheets of the procedures that these trees run
    sheet: str = "wall"  # a name of `SHEETS`
    paper: str = ""  # "" for the shop's
    distance: float | None = None  # meters
    fix: str = ""  # for the customer's sheet; "" for every fix of the tree
    found: Diagnosis | None = None  # by a walk, for the customer's sheet
    story: Story | None = None  # of a walk
    vehicle: Vehicle | None = None  # whose pins and values the sheet shows; None for any


@dataclass(frozen=True, slots=True)
class SheetKind:
    """One kind of sheet."""

    print: Callable[[Tree, Library, PrintRequest], Iterator[PrintedFile]]
    link: str = ""  # on the page of a tree; "" if the site doesn't offer it
    suffix: str = ""  # of its file in the site, after the tree's id


def _file(tree: Tree, request: PrintRequest) -> str:
    return f"{tree.id}.{request.vehicle.id}" if request.vehicle else tree.id


def _wall(tree: Tree, library: Library, request: PrintRequest) -> Iterator[PrintedFile]:
    from builder.prints.wall import wall_chart

    pdf = wall_chart(tree, library, request.paper, request.distance)
    yield f"{_file(tree, request)}.pdf", pdf


def _bench(tree: Tree, library: Library, request: PrintRequest) -> Iterator[PrintedFile]:
    from builder.prints.bench import bench_sheet

    yield f"{_file(tree, request)}.bench.pdf", bench_sheet(tree, library, request.paper)


def _story(tree: Tree, library: Library, request: PrintRequest) -> Iterator[PrintedFile]:
    from builder.prints.repair_order import story_sheet

    if request.story is None:
        raise NotThereError("a story needs a walk: name its record with --record FILE")
    yield f"{tree.id}.story.pdf", story_sheet(tree, library, request.story, request.paper)


def _customer(tree: Tree, library: Library, request: PrintRequest) -> Iterator[PrintedFile]:
    from builder.prints.customer import customer_sheet

    if found := request.found:
        pdf = customer_sheet(tree, found.fix, library, request.paper, found)
        yield f"{tree.id}.{found.fix}.pdf", pdf
        return
    fixes = [name for name, step in tree.steps.items() if isinstance(step.body, Fix)]
    if request.fix and request.fix not in fixes:
        near = [f"did you mean `{fix}`?" for fix in get_close_matches(request.fix, fixes, n=1)]
        hint = next(iter(near), f"fixes: {', '.join(fixes)}")
        raise NotThereError(f"`{request.fix}` is no fix of {tree.id}; {hint}")
    for name in [request.fix] if request.fix else fixes:
        yield f"{tree.id}.{name}.pdf", customer_sheet(tree, name, library, request.paper)


SHEETS: Mapping[str, SheetKind] = {
    "wall": SheetKind(_wall, "Wall chart"),
    "bench": SheetKind(_bench, "Bench sheet", "-bench"),
    "customer": SheetKind(_customer),
    "story": SheetKind(_story),
}
