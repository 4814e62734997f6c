"""`baytree review`: say what a change of the trees means in the bay."""

import argparse
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from builder.commands.place import from_here, shop_of, write_output

if TYPE_CHECKING:
    from builder.review.remark import TreeReview

NAME = "review"
HELP = "say what a change means in the bay"
FORMATS = ("text", "markdown", "json", "html")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words and flags."""
    add = parser.add_argument
    add("base", nargs="?", metavar="BASE",
        help="git revision to compare with (default: where the main branch was left)")  # fmt: skip
    add("--format", choices=FORMATS, default="text",
        help="output format (default: text); html is one page with the charts")  # fmt: skip
    add("--out", metavar="FILE", help="file to write (default: print it)")


def run(options: argparse.Namespace) -> int:
    """Compare the working tree with a revision, and print or write what changed."""
    from builder.review.compare_shops import compare_shops
    from builder.review.review_forms import REVIEW_FORMS
    from builder.review.revisions import base_of, write_revision

    shop = shop_of(options)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_revision(shop, options.base or base_of(shop), folder)
        reviews = compare_shops(folder, shop)
    html = options.format == "html"
    text = _page(shop, reviews) if html else REVIEW_FORMS[options.format](reviews)
    if options.out:
        file = Path(options.out)
        written = write_output(file.parent, file.name, f"{text.rstrip()}\n".encode())
        print(from_here(written.resolve()))
    else:
        print(text)
    return 0


def _page(shop: Path, reviews: Mapping[str, "TreeReview"]) -> str:
    """Return the page, with a chart of each tree that can be read."""
    from builder.check.filled_tree import tree_of
    from builder.check.unchecked_library import read_library
    from builder.pages.review import review_page

    library, _ = read_library(shop)
    known = {*library.trees, *(str(one.tree.id) for one in library.procedures.values())}
    trees = {id_: tree_of(shop, library, id_) for id_ in reviews if id_ in known}
    return review_page(reviews, trees, library)
