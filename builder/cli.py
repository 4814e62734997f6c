"""The command line: flags, and the one place where an error becomes words.

In: arguments. Out: an exit status: 0 sound, 1 findings, 2 the command could not run.
"""

import argparse
import sys
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from builder import commands


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command."""
    options = _parser().parse_args(arguments)
    try:
        shop = _shop(options.shop)
        checked = commands.check(shop, map(Path, options.files), options.today)
    except OSError as error:
        print(f"baytree: {error}", file=sys.stderr)
        return 2
    for one in checked.findings:
        where = f"{one.at.file}:{one.at.line}:{one.at.column}"
        print(f"{where}: {one.severity}: {one.message} [{one.rule}]\n    {one.why}\n    {one.hint}")
    print(f"{checked.trees} trees, {checked.errors} errors, {checked.warnings} warnings")
    return 1 if checked.errors or (options.strict and checked.findings) else 0


def _shop(folder: str | None) -> Path:
    """Find the shop: the folder given, or the nearest one upward that holds trees."""
    start = Path(folder or ".").resolve()
    for place in [start] if folder else [start, *start.parents]:
        if (place / "site_config").is_dir() or (place / "trees").is_dir():
            return place
    raise FileNotFoundError(f"no shop here: {start} holds no trees/ and no site_config/")


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="baytree", description=__doc__)
    parser.add_argument("--shop", metavar="DIR")
    commands_ = parser.add_subparsers(dest="command", required=True)
    check = commands_.add_parser("check")
    check.add_argument("files", nargs="*", metavar="FILE")
    check.add_argument("--strict", action="store_true")
    check.add_argument("--today", type=date.fromisoformat, default=date.today())
    return parser


if __name__ == "__main__":
    sys.exit(main())
