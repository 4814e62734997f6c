"""`baytree rename`: give a step or a tree another name, wherever it is named."""

import argparse

from builder.commands.new import print_written
from builder.commands.place import shop_of
from builder.commands.tree_names import tree_in_shop

NAME = "rename"
HELP = "give a step or a tree another name, wherever it is named"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the words."""
    parser.add_argument("old", metavar="OLD", help="tree, or tree#step")
    parser.add_argument("new", metavar="NEW", help="new tree ID, or the step's new name")


def run(options: argparse.Namespace) -> int:
    """Rename, and print the files that were written."""
    from builder.authoring.rename import rename_step, rename_tree

    shop = shop_of(options)
    name, _, step = options.old.partition("#")
    tree = tree_in_shop(name, shop)
    if step:
        return print_written(rename_step(shop, tree, step, options.new.rpartition("#")[2]))
    return print_written(rename_tree(shop, tree, options.new))
