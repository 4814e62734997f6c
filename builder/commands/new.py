"""`baytree new`: create a file to fill in from its template."""

import argparse
import sys
from datetime import date
from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.commands.place import from_here, shop_of

NAME = "new"
HELP = "create a file to fill in: a tree, a procedure, a module, ..."
KINDS = ("tree", "procedure", "module", "vehicle", "how-to", "case")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    add = parser.add_argument
    add("what", choices=KINDS, metavar="KIND", help=f"one of {', '.join(KINDS)}")
    add("name", metavar="NAME",
        help="of a tree system/name, such as charging/lamp-on; of a case its number")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Write the new file, and print its name."""
    from builder.authoring.new_entry import new_entry
    from builder.authoring.new_tree import new_tree

    shop, today = shop_of(options), date.today()
    if options.what == "tree":
        return print_written(new_tree(shop, options.name, today))
    return print_written(new_entry(shop, options.what, options.name, today))


def print_written(written: Path | tuple[Path, ...] | NotWritten) -> int:
    """Print what was written, or why nothing was; returns the exit status."""
    if isinstance(written, NotWritten):
        print(f"baytree: {written.message}\n  hint: {written.hint}", file=sys.stderr)
        return 2
    for path in written if isinstance(written, tuple) else (written,):
        print(from_here(path.resolve()))
    return 0
