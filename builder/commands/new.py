"""`baytree new`: create a tree or a procedure from the template."""

import argparse
import sys
from datetime import date
from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.commands.place import from_here, shop_of

NAME = "new"
HELP = "create a tree or a procedure from the template"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    add = parser.add_argument
    add("what", choices=("tree", "procedure"), metavar="tree|procedure", help="tree or procedure")
    add("id", metavar="ID",
        help="system/name, such as charging/lamp-on; of a procedure its name")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Write the new file, and print its name."""
    from builder.authoring.new_procedure import new_procedure
    from builder.authoring.new_tree import new_tree

    write = new_procedure if options.what == "procedure" else new_tree
    return print_written(write(shop_of(options), options.id, date.today()))


def print_written(written: Path | tuple[Path, ...] | NotWritten) -> int:
    """Print what was written, or why nothing was; returns the exit status."""
    if isinstance(written, NotWritten):
        print(f"baytree: {written.message}\n  hint: {written.hint}", file=sys.stderr)
        return 2
    for path in written if isinstance(written, tuple) else (written,):
        print(from_here(path.resolve()))
    return 0
