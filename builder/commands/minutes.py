"""`baytree minutes`: estimate how long a tree takes."""

import argparse
import json

from builder.commands.place import shop_of

NAME = "minutes"
HELP = "estimate how long a tree takes"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("tree", metavar="TREE", help="tree ID")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="output format")


def run(options: argparse.Namespace) -> int:
    """Print the expected, shortest and longest time of a tree, and those of each fix."""
    from builder.plan.minutes import minutes_as_json, tree_minutes
    from builder.reader.trees import the_tree

    whole = tree_minutes(the_tree(shop_of(options), options.tree))
    if options.format == "json":
        print(json.dumps(minutes_as_json(whole), indent=2))
        return 0
    print(f"expected {float(whole.expected):.0f} min, shortest {float(whole.shortest):.0f}, "
          f"longest {float(whole.longest):.0f}")  # fmt: skip
    for name, fix in whole.fixes.items():
        print(f"{float(fix.chance):6.0%}  {float(fix.minutes):4.0f} min  {name}")
    return 0
