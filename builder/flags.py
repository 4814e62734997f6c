"""The words and flags of the command line.

In: nothing. Out: the parser, and what `print` can be asked for; what each command does stands in
`cli`.
"""

import argparse
import re
from dataclasses import dataclass
from datetime import date

from builder import __version__


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is to be printed."""

    trees: tuple[str, ...] = ()
    system: str = ""  # a book of all its trees
    every: bool = False
    sheet: str = "wall"  # wall | bench | customer
    paper: str = ""  # "" for the shop's
    distance: float | None = None  # metres
    fix: str = ""  # for the customer's sheet; "" for every fix of the tree


def parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    made = argparse.ArgumentParser(
        prog="baytree",
        description="Decision trees of a repair shop: proved sound, read as a site, printed.",
    )
    made.add_argument("--version", action="version", version=f"baytree {__version__}")
    made.add_argument("--shop", metavar="DIR", help="the folder that holds trees/ and kb/")
    sub = made.add_subparsers(dest="command", required=True, metavar="COMMAND")

    check = _command(sub, "check", "say what is wrong, and where")
    check.add_argument("files", nargs="*", metavar="FILE", help="only what concerns these files")
    check.add_argument("--format", choices=("text", "json", "sarif", "github"), default="text")
    check.add_argument("--strict", action="store_true", help="a warning fails as well")
    _today(check)

    build = _command(sub, "build", "check, then make the site and the prints")
    build.add_argument("--out", metavar="DIR", help="where to (site/ in the shop)")
    build.add_argument("--no-prints", action="store_true", help="the site alone")
    build.set_defaults(format="text")
    _today(build)

    prints = _command(sub, "print", "charts for the wall, sheets for bench and customer")
    prints.add_argument("trees", nargs="*", metavar="TREE")
    prints.add_argument("--all", action="store_true", help="every tree in use")
    prints.add_argument("--system", metavar="S", help="one book of a system's trees")
    prints.add_argument("--sheet", choices=("wall", "bench", "customer"), default="wall")
    prints.add_argument("--paper", choices=("letter", "tabloid", "a4", "a3"))
    prints.add_argument("--distance", type=_metres, metavar="1.5m", help="to be read from there")
    prints.add_argument("--fix", metavar="ID", help="the fix of a customer's sheet (all of them)")
    prints.add_argument("--out", metavar="DIR", help="where to (prints/ in the shop)")

    serve = _command(sub, "serve", "the site while you write: built anew on every change")
    serve.add_argument("--port", type=_port, default=8000, metavar="N",
                       help="0 for any that is free")  # fmt: skip

    find = _command(sub, "find", "find trees by what the customer says, a lamp or a code")
    find.add_argument("words", nargs="+", metavar="WORDS")
    find.add_argument("--format", choices=("text", "json"), default="text")

    minutes = _command(sub, "minutes", "how long following a tree takes")
    minutes.add_argument("tree", metavar="TREE")
    minutes.add_argument("--format", choices=("text", "json"), default="text")

    start = _command(sub, "start", "a new, empty shop that checks and builds")
    start.add_argument("folder", metavar="DIR")

    new = _command(sub, "new", "a tree to fill in, sound from the first line")
    new.add_argument("what", choices=("tree",), metavar="tree")
    new.add_argument("id", metavar="ID", help="system and name, such as charging/lamp-on")

    rules = _command(sub, "rules", "what the rules mean")
    rules.add_argument("name", nargs="?", metavar="NAME")

    schema = _command(sub, "schema", "the schema of a kind of file, for editors")
    schema.add_argument("kind", nargs="?", metavar="KIND")
    schema.add_argument("--out", metavar="DIR", help="where to (.schemas/ in the shop)")
    return made


def _command(
    sub: "argparse._SubParsersAction[argparse.ArgumentParser]",
    name: str,
    words: str,
) -> argparse.ArgumentParser:
    made: argparse.ArgumentParser = sub.add_parser(name, help=words, description=words)
    return made


def _today(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--today", type=date.fromisoformat, default=date.today(), metavar="DATE",
                        help="the day it is taken to be, for ages of reviews")  # fmt: skip


def _port(text: str) -> int:
    if not re.fullmatch("[0-9]{1,5}", text) or int(text) > 65535:
        raise argparse.ArgumentTypeError(f"`{text}` is no port; write one from 1024 to 65535")
    return int(text)


def _metres(text: str) -> float:
    match = re.fullmatch(r"([0-9]+(?:[.,][0-9]+)?) *(m|cm|ft)?", text)
    if not match or not float(match[1].replace(",", ".")):
        raise argparse.ArgumentTypeError(f"`{text}` is no distance; write it like 1.5m")
    return float(match[1].replace(",", ".")) * {"cm": 0.01, "ft": 0.3048}.get(match[2], 1)
