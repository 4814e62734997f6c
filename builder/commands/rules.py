"""`baytree rules`: list the checks, or explain one."""

import argparse
import sys

from builder.rules.shared.close_names import suggestion
from builder.rules.shared.documentation import documented_rules

NAME = "rules"
HELP = "list the checks, or explain one"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument("name", nargs="?", metavar="NAME", help="check to explain")


def run(options: argparse.Namespace) -> int:
    """Print a line for every rule, or the page of one."""
    named = [page for page in documented_rules() if options.name in (None, page.rule.name)]
    if not named:
        names = [page.rule.name for page in documented_rules()]
        parts = [name for name in names if options.name in name.split("-")]
        hint = (
            f"did you mean {' or '.join(f'`{name}`' for name in parts)}?"
            if parts
            else suggestion(options.name, names, "`baytree rules` lists them all")
        )
        print(f"baytree: there is no rule `{options.name}`; {hint}", file=sys.stderr)
        return 2
    for page in named:
        print(f"{page.rule.name:26} {page.rule.severity:8} {page.rule.summary}")
    if options.name:
        page = named[0]
        print(f"\n{page.finds}\n\nWhy: {page.why}\n\nWrong:\n\n{page.wrong}\nRight:\n\n"
              f"{page.right}\nFix: {page.fix}")  # fmt: skip
    return 0
