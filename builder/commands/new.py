"""`baytree new`: create a tree from the template."""

import argparse
import sys
from datetime import date
from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.commands.place import from_here, shop_of

NAME = "new"
HELP = "create a tree from the template"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    parser.add_argument("what", choices=("tree",), metavar="tree", help="tree")
    parser.add_argument("id", metavar="ID", help="system/name, such as charging/lamp-on")


def run(options: argparse.Namespace) -> int:
    """Write the new tree, and print its file."""
    from builder.authoring.new_tree import new_tree

    return print_written(new_tree(shop_of(options), options.id, date.today()))


def print_written(written: Path | tuple[Path, ...] | NotWritten) -> int:
    """Print what was written, or why nothing was; returns the exit status."""
    if isinstance(written, NotWritten):
        print(f"baytree: {written.message}\n  hint: {written.hint}", file=sys.stderr)
        return 2
    for path in written if isinstance(written, tuple) else (written,):
        print(from_here(path.resolve()))
    return 0
