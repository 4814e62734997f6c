"""`baytree check`: report errors and warnings by line."""

import argparse

from builder.cache.database import opened
from builder.check.verdict import check
from builder.commands.findings import add_today, print_findings, print_notes
from builder.commands.place import shop_of
from builder.commands.tree_names import files_named

NAME = "check"
HELP = "report errors and warnings by line"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument(
        "files", nargs="*", metavar="FILE", help="report only these files, folders or trees"
    )
    parser.add_argument("--format", choices=("text", "json", "sarif", "github"), default="text",
                        help="output format (default: text)")  # fmt: skip
    parser.add_argument("--strict", action="store_true", help="treat warnings as errors")
    add_today(parser)


def run(options: argparse.Namespace) -> int:
    """Check the shop and print what was found."""
    shop = shop_of(options)
    files = [file for words in options.files for file in files_named(words, shop)]
    with opened(shop) as cache:
        verdict = check(shop, cache, options.today, files)
        print_findings(shop, verdict, options.format)
    print_notes(cache.notes)
    return 1 if verdict.errors or (options.strict and verdict.findings) else 0
