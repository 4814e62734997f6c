"""`baytree review`: say what a change of the trees means in the bay."""

import argparse
import tempfile
from pathlib import Path

from builder.commands.place import shop_of

NAME = "review"
HELP = "say what a change means in the bay"
FORMATS = ("text", "markdown", "json")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words and flags."""
    add = parser.add_argument
    add("base", nargs="?", metavar="BASE",
        help="git revision to compare with (default: where the main branch was left)")  # fmt: skip
    add("--format", choices=FORMATS, default="text", help="output format")


def run(options: argparse.Namespace) -> int:
    """Compare the working tree with a revision, and print what changed."""
    from builder.review.compare_shops import compare_shops
    from builder.review.review_forms import REVIEW_FORMS
    from builder.review.revisions import base_of, write_revision

    shop = shop_of(options)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_revision(shop, options.base or base_of(shop), folder)
        print(REVIEW_FORMS[options.format](compare_shops(folder, shop)))
    return 0
