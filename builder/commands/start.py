"""`baytree start`: create a shop folder that passes the checks."""

import argparse
from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.commands.new import print_written
from builder.commands.schema import write_schemas
from builder.reader.knowledge_files import read_knowledge

NAME = "start"
HELP = "create a shop folder that passes the checks"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("folder", metavar="DIR", help="folder to create")
    parser.add_argument("--with-examples", action="store_true",
                        help="with three small trees to read and change")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Write the new shop, and print its files."""
    from builder.authoring.new_shop import new_shop

    folder = Path(options.folder)
    written = new_shop(folder, with_examples=options.with_examples)
    if not isinstance(written, NotWritten):
        write_schemas(read_knowledge(folder)[0], folder / ".schemas")
    return print_written(written)
