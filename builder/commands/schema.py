"""`baytree schema`: write JSON Schemas for your editor."""

import argparse
import sys
from pathlib import Path

from builder.commands.place import from_here, shop_of, write_output
from builder.model.library import Library
from builder.reader.knowledge_files import read_knowledge
from builder.reader.schemas.schema_list import PUBLISHED, schema_texts
from builder.rules.shared.close_names import suggestion

NAME = "schema"
HELP = "write JSON Schemas for your editor"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("kind", nargs="?", metavar="KIND",
                        help="file type, such as tree (default: all)")  # fmt: skip
    parser.add_argument("--out", metavar="DIR", help="output folder (default: .schemas/)")


def run(options: argparse.Namespace) -> int:
    """Write the schemas with the shop's own names, or print the one that is named."""
    if options.kind and options.kind not in PUBLISHED:
        hint = suggestion(options.kind, PUBLISHED, f"use one of {', '.join(PUBLISHED)}")
        print(f"baytree: there is no kind of file `{options.kind}`; {hint}", file=sys.stderr)
        return 2
    shop = shop_of(options)
    library = read_knowledge(shop)[0]
    if options.kind and not options.out:
        print(*schema_texts(library, options.kind).values(), sep="", end="")
        return 0
    folder = Path(options.out) if options.out else shop / ".schemas"
    for path in write_schemas(library, folder, options.kind):
        print(from_here(path.resolve()))
    return 0


def write_schemas(library: Library, folder: Path, kind: str | None = None) -> tuple[Path, ...]:
    """Write the schemas where an editor finds them.

    Raises FileExistsError where a link leads out of the folder.
    """
    texts = schema_texts(library, kind)
    return tuple(write_output(folder, name, text.encode()) for name, text in texts.items())
