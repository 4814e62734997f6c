"""`baytree minutes`: estimate how long a tree takes."""

import argparse
import json

from builder.commands.place import shop_of
from builder.commands.tree_names import tree_named

NAME = "minutes"
HELP = "estimate how long a tree takes"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("tree", metavar="TREE", help="tree ID")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="output format")


def run(options: argparse.Namespace) -> int:
    """Print the expected, shortest and longest time of a tree, and those of each fix."""
    from builder.cache.database import opened
    from builder.check.filled_tree import tree_of
    from builder.check.verdict import known_library
    from builder.plan.minutes import minutes_as_json, tree_minutes

    shop = shop_of(options)
    with opened(shop) as cache:
        library = known_library(shop, cache)
    id_ = tree_named(options.tree, library.trees)
    whole = tree_minutes(tree_of(shop, library, id_))
    if options.format == "json":
        print(json.dumps(minutes_as_json(whole), indent=2))
        return 0
    print(f"expected {float(whole.expected):.0f} min, shortest {float(whole.shortest):.0f}, "
          f"longest {float(whole.longest):.0f}")  # fmt: skip
    for name, fix in whole.fixes.items():
        print(f"{float(fix.chance):6.0%}  {float(fix.minutes):4.0f} min  {name}")
    return 0
