"""The command line: the list of commands, and the one place where an error becomes words.

In: arguments. Out: an exit status: 0 sound, 1 findings, 2 the command could not run.
"""

import argparse
import io
import os
import sys
from collections.abc import Sequence
from typing import Protocol

from builder import __version__
from builder.commands import (
    build,
    cases,
    check,
    completion,
    drill,
    find,
    minutes,
    new,
    rename,
    review,
    rules,
    schema,
    serve,
    start,
    walk,
    words,
)
from builder.commands import print as print_
from builder.commands.refusals import WordedParser, words_left_over
from builder.model.library import NotThereError


class Command(Protocol):
    """A module that is one command."""

    NAME: str
    HELP: str

    def add_flags(self, parser: argparse.ArgumentParser, /) -> None:
        """Add the command's own words and flags."""

    def run(self, options: argparse.Namespace, /) -> int:
        """Do the work and return the exit status."""


COMMANDS: tuple[Command, ...] = (
    check, build, print_, serve, find, walk, drill, cases, minutes, review, start, new, rename,
    rules, words, schema, completion,
)  # fmt: skip
OUR_BUG = "this is a bug in Baytree, not in your files. Please send us the command and these lines:"


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command."""
    _print_anything()
    words, whole = [*(sys.argv[1:] if arguments is None else arguments)], parser()
    WordedParser.words = words
    options, unknown = whole.parse_known_args(words)
    if unknown:
        options.parser.error(words_left_over(whole, options.parser, words, unknown))
    try:
        status: int = options.run(options)
        sys.stdout.flush()
        return status
    except KeyboardInterrupt:
        return 130
    except BrokenPipeError:
        # The reader has read enough; what is still to be written goes nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 2
    except (OSError, NotThereError) as error:
        print(f"baytree: {_plainly(error)}", file=sys.stderr)
        return 2
    except Exception:
        print(f"baytree: {OUR_BUG}", file=sys.stderr)
        sys.excepthook(*sys.exc_info())
        return 2


def parser() -> argparse.ArgumentParser:
    """Return the parser of all commands."""
    whole = WordedParser(
        prog="baytree",
        description="Check decision trees, build the shop site, and print charts.",
    )
    whole.add_argument("--version", action="version", version=f"baytree {__version__}")
    whole.add_argument("--shop", metavar="DIR", help="shop folder (default: nearest with trees/)")
    commands = whole.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for command in COMMANDS:
        words = commands.add_parser(command.NAME, help=command.HELP, description=command.HELP)
        command.add_flags(words)
        words.set_defaults(run=command.run, parser=words)
    return whole


def _plainly(error: Exception) -> str:
    """Return an error of the system in words: `[Errno 2] No such file` is no sentence."""
    if isinstance(error, OSError) and error.filename and error.strerror:
        name = os.fsdecode(error.filename)
        if isinstance(error, FileNotFoundError):
            return f"there is no file `{name}`"
        return f"`{name}`: {error.strerror[:1].lower()}{error.strerror[1:]}"
    return str(error)


def _print_anything() -> None:
    """Let every character through: a file's name may be no text, a pipe's encoding not UTF-8."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            encoding = stream.encoding if stream.isatty() else "utf-8"
            stream.reconfigure(encoding=encoding, errors="backslashreplace")


if __name__ == "__main__":
    sys.exit(main())
