"""`baytree new`: create a file to fill in from its template."""

import argparse
import os
import sys
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from builder.authoring.not_written import NotWritten
from builder.commands.place import from_here, shop_of
from builder.model.library import Library, NotThereError

if TYPE_CHECKING:
    from builder.authoring.walked_path import WalkedPath

NAME = "new"
HELP = "create a file to fill in: a tree, a procedure, a module, ..."
READ_IT = (
    "It tells what that job did. `baytree check` names the answers that are left to write.\n"
    "Read its comments before you share it: one may name somebody that the record doesn't know."
)
KINDS = ("tree", "procedure", "module", "vehicle", "how-to", "state", "case")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    add = parser.add_argument
    add("what", choices=KINDS, metavar="KIND", help=f"one of {', '.join(KINDS)}")
    add("name", metavar="NAME",
        help="of a tree system/name, such as charging/lamp-on; of a case its number")  # fmt: skip
    add("--from-record", metavar="FILE",
        help="draft a tree from a job: the record of a walk, or a file of kb/cases")  # fmt: skip


def run(options: argparse.Namespace) -> int:
    """Write the new file, and print its name."""
    from builder.authoring.new_entry import new_entry
    from builder.authoring.new_tree import new_tree

    shop, today = shop_of(options), date.today()
    if options.from_record and options.what != "tree":
        print("baytree: --from-record drafts a tree: `baytree new tree ID --from-record FILE`",
              file=sys.stderr)  # fmt: skip
        return 2
    if options.from_record:
        drafted = _drafted(shop, options, today)
        if isinstance(drafted, Path):
            print(READ_IT, file=sys.stderr)
        return print_written(drafted)
    if options.what == "tree":
        return print_written(new_tree(shop, options.name, today))
    return print_written(new_entry(shop, options.what, options.name, today))


def _drafted(shop: Path, options: argparse.Namespace, today: date) -> Path | NotWritten:
    """Draft a tree from a job. Raises NotThereError, OSError."""
    from builder.authoring.new_file import write_new
    from builder.authoring.new_tree import bad_tree_id
    from builder.authoring.source_steps import SourceTrees
    from builder.authoring.tree_of_path import tree_of_path
    from builder.reader.knowledge_files import read_knowledge

    if problem := bad_tree_id(shop, options.name):
        return problem
    library, _ = read_knowledge(shop)
    path = _path_in(shop, Path(options.from_record), library)
    text = tree_of_path(path, SourceTrees(shop), library, options.name, today)
    if not text:
        return NotWritten(f"{options.from_record} has no step yet", "walk the tree first")
    return write_new(shop, f"trees/{options.name}.yml", text)


def _path_in(shop: Path, file: Path, library: Library) -> "WalkedPath":
    """Return the path in a record or in a closed job of the shop. Raises NotThereError, OSError."""
    from builder.authoring.walked_path import path_of_case, path_of_record
    from builder.reader.record_file import read_record

    if file.suffix in (".yml", ".yaml"):
        # Not Path.resolve: before Python 3.13 that raises an error on a link to itself.
        files = [Path(os.path.realpath(path)) for path in (file, shop / file)]
        case = next((one for one in library.cases.values() if shop / one.file in files), None)
        if case is None:
            raise NotThereError(f"{file} is no closed job of kb/cases that can be read")
        return path_of_case(case)
    record = read_record(file)
    if isinstance(record, str):
        raise NotThereError(f"{file}: {record}")
    return path_of_record(record)


def print_written(written: Path | tuple[Path, ...] | NotWritten) -> int:
    """Print what was written, or why nothing was; returns the exit status."""
    if isinstance(written, NotWritten):
        print(f"baytree: {written.message}\n  hint: {written.hint}", file=sys.stderr)
        return 2
    for path in written if isinstance(written, tuple) else (written,):
        print(from_here(path.resolve()))
    return 0
