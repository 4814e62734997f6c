"""`baytree print`: print wall charts, bench sheets, customer estimates, and stories of jobs."""

import argparse
import re
import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from builder.cache.database import opened
from builder.check.verdict import known_library
from builder.commands.place import from_here, shop_of, write_output
from builder.commands.progress import progress_bar
from builder.commands.tree_names import tree_named
from builder.commands.vehicle_names import refuse_other_vehicles, vehicle_named
from builder.cores.progress import counted
from builder.model.library import Library, NotThereError, self_contained
from builder.rules.shared.close_names import suggestion

if TYPE_CHECKING:
    from builder.prints.sheets import PrintRequest

NAME = "print"
# Named here too, so that no other command loads what draws sheets; a test holds them equal.
SHEET_NAMES = ("wall", "bench", "customer", "story")
OF_A_FIX = ("customer",)
OF_A_RECORD = ("customer", "story")
OF_A_VEHICLE = ("wall", "bench")
HELP = "print wall charts, bench sheets, customer estimates, and stories of jobs"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    add = parser.add_argument
    add("trees", nargs="*", metavar="TREE",
        help="tree ID, such as charging/lamp-on, or procedures/NAME")  # fmt: skip
    add("--all", action="store_true", help="all published trees and all procedures")
    add("--system", metavar="S", help="all trees of a system, in one PDF")
    add("--sheet", choices=SHEET_NAMES, default="wall",
        help="what to print (default: wall)")  # fmt: skip
    add("--paper", choices=("letter", "tabloid", "a4", "a3"),
        help="paper size (default: the shop's)")  # fmt: skip
    add("--distance", type=_meters, metavar="5ft", help="reading distance")
    add("--procedures", action="store_true", help="also print the procedures these trees run")
    add("--vehicle", metavar="ID", help="print its pins, fuses and specs, such as tern")
    add("--fix", metavar="ID", help="fix to price (default: all)")
    add("--record", metavar="FILE", help="record of a walk, for its customer sheet or its story")
    add("--out", metavar="DIR", help="output folder (default: prints/)")


def run(options: argparse.Namespace) -> int:
    """Print every sheet that is asked for."""
    from tqdm import tqdm

    from builder.check.filled_tree import tree_of
    from builder.prints.print_jobs import print_trees, tree_ids

    if message := _clash(options):
        print(f"baytree: {message}", file=sys.stderr)
        return 2
    shop = shop_of(options)
    out = Path(options.out) if options.out else shop / "prints"
    if options.record:
        return _print_record(options, shop, out)
    with opened(shop) as cache:
        library = self_contained(known_library(shop, cache))
    request = _request(options, library)
    read_tree = partial(tree_of, shop, library, vehicle=request.vehicle)
    ids = tree_ids(request, library)
    if not ids:
        print("baytree: nothing to print: name a tree, or use --system or --all", file=sys.stderr)
        return 2
    made = print_trees(ids, request, library, read_tree)
    with progress_bar() as progress:
        for files in counted(made, progress, "Printing trees", len(ids)):
            for name, pdf in files:
                tqdm.write(str(from_here(write_output(out, name, pdf).resolve())))
    return 0


def _clash(options: argparse.Namespace) -> str:
    """Return which flags don't go together."""
    if options.fix and options.sheet not in OF_A_FIX:
        return "--fix is for the sheet of one fix; add `--sheet customer`"
    if options.record and options.sheet not in OF_A_RECORD:
        return "--record is for the sheets of one job; add `--sheet customer` or `--sheet story`"
    if options.record and (options.trees or options.system or options.all or options.fix):
        return "--record names the job: leave out trees, --system, --all and --fix"
    if options.vehicle and options.sheet not in OF_A_VEHICLE:
        return "--vehicle is for wall charts and bench sheets; add `--sheet bench`, or leave it out"
    if options.sheet == "story" and not options.record:
        return "a story needs a walk: name its record with --record FILE"
    return ""


def _print_record(options: argparse.Namespace, shop: Path, out: Path) -> int:
    """Print the sheet of one job."""
    from builder.commands.records import found_by, played_job, story_by
    from builder.prints.sheets import SHEETS, PrintRequest
    from builder.walk.diagnosis import Diagnosis

    job = played_job(shop, Path(options.record))
    found = found_by(job) if options.sheet == "customer" else None
    if found is not None and not isinstance(found, Diagnosis):
        print(f"baytree: {options.record}: {found.message}", file=sys.stderr)
        return 2
    story = story_by(job) if options.sheet == "story" else None
    request = PrintRequest(sheet=options.sheet, paper=options.paper or "", found=found, story=story)
    for name, pdf in SHEETS[options.sheet].print(job.tree, job.library, request):
        print(from_here(write_output(out, name, pdf).resolve()))
    return 0


def _request(options: argparse.Namespace, library: Library) -> "PrintRequest":
    """Return what to print. Raises NotThereError for what isn't there or doesn't go together."""
    from builder.prints.sheets import PrintRequest

    if options.system and options.system not in library.systems:
        hint = suggestion(options.system, library.systems, "use one of kb/systems.yml")
        raise NotThereError(f"there is no system `{options.system}`; {hint}")
    known = (*library.trees, *(one.tree.id for one in library.procedures.values()))
    trees = tuple(tree_named(words, known) for words in options.trees)
    vehicle = vehicle_named(options.vehicle, library) if options.vehicle else None
    if vehicle:
        for id_ in trees:
            refuse_other_vehicles(id_, vehicle, library)
    return PrintRequest(
        trees=trees,
        vehicle=vehicle,
        system=options.system or "",
        every=options.all,
        procedures=options.procedures,
        sheet=options.sheet,
        paper=options.paper or "",
        distance=options.distance,
        fix=options.fix or "",
    )


def _meters(text: str) -> float:
    match = re.fullmatch(r"([0-9]+(?:[.,][0-9]+)?) *(m|cm|ft)?", text)
    if match and not match[2]:
        raise argparse.ArgumentTypeError(f"{text} what? write `{text}ft` or `{text}m`")
    if not match or not float(match[1].replace(",", ".")):
        raise argparse.ArgumentTypeError(f"`{text}` is no distance; write it like 1.5m or 5ft")
    return float(match[1].replace(",", ".")) * {"m": 1, "cm": 0.01, "ft": 0.3048}[match[2]]
