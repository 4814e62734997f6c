"""`baytree rename`: give a step, a tree, a procedure or an article another name everywhere."""

import argparse
import re

from builder.commands.new import print_written
from builder.commands.place import shop_of
from builder.commands.tree_names import tree_in_shop

NAME = "rename"
HELP = "give a step, a tree, a procedure or an article another name everywhere"
_ARTICLE = re.compile(r"(?:kb/)?how-to/([^/]+?)(?:\.md)?")
_PROCEDURE = re.compile(r"(?:kb/)?procedures/([^/#]+?)(?:\.yml)?")


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    parser.add_argument(
        "old", metavar="OLD", help="tree, tree#step, procedures/name, or how-to/article"
    )
    parser.add_argument(
        "new", metavar="NEW", help="new tree ID, or the new name of the step or the file"
    )


def run(options: argparse.Namespace) -> int:
    """Rename, and print the files that were written."""
    from builder.authoring.rename import (
        rename_article,
        rename_procedure,
        rename_step,
        rename_tree,
    )

    shop = shop_of(options)
    if article := _ARTICLE.fullmatch(options.old):
        new = _ARTICLE.fullmatch(options.new)
        return print_written(rename_article(shop, article[1], new[1] if new else options.new))
    if procedure := _PROCEDURE.fullmatch(options.old):
        new = _PROCEDURE.fullmatch(options.new)
        return print_written(rename_procedure(shop, procedure[1], new[1] if new else options.new))
    name, _, step = options.old.partition("#")
    tree = tree_in_shop(name, shop)
    if step:
        return print_written(rename_step(shop, tree, step, options.new.rpartition("#")[2]))
    return print_written(rename_tree(shop, tree, options.new))
