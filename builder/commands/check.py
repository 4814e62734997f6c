"""`baytree check`: report errors and warnings by line, and fix those that leave no choice."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from builder.authoring.corrected_shop import corrected_files, write_corrected
from builder.cache.database import Cache, opened
from builder.check.verdict import Verdict, check
from builder.commands.findings import add_today, print_findings, print_notes
from builder.commands.place import shop_of
from builder.commands.tree_names import files_named
from builder.model.correction import CorrectedFile
from builder.report.corrections_as_text import corrections_as_diff, corrections_as_text

NAME = "check"
HELP = "report errors and warnings by line, or fix them"


def add_flags(parser: argparse.ArgumentParser) -> None:
    """Add the flags."""
    parser.add_argument(
        "files",
        nargs="*",
        metavar="FILE",
        help="report only what is about these files, folders or trees",
    )
    parser.add_argument("--format", choices=("text", "json", "sarif", "github"), default="text",
                        help="output format (default: text)")  # fmt: skip
    parser.add_argument("--strict", action="store_true", help="treat warnings as errors")
    parser.add_argument("--fix", action="store_true",
                        help="fix what has only one right answer, and report the rest")  # fmt: skip
    parser.add_argument("--dry-run", action="store_true",
                        help="with --fix: show what would change, and write nothing")  # fmt: skip
    add_today(parser)


def run(options: argparse.Namespace) -> int:
    """Check the shop, fix it if asked to, and print what was found."""
    if options.dry_run and not options.fix:
        print("baytree: --dry-run shows what --fix would change: add --fix", file=sys.stderr)
        return 2
    shop = shop_of(options)
    files = [file for words in options.files for file in files_named(words, shop)]
    with opened(shop) as cache:
        verdict = check(shop, cache, options.today, files)
        fixed = _fixed(shop, cache, verdict, options) if options.fix else None
        if fixed and not options.dry_run:
            changed = [*write_corrected(shop, fixed)]
            fixed = tuple(one for one in fixed if one.file not in changed)
            verdict = check(shop, cache, options.today, files)
            for file in changed:
                print_notes([f"{file} was changed meanwhile, so it is left alone: run this again"])
        _print(shop, verdict, fixed, options)
    print_notes(cache.notes)
    return 1 if verdict.errors or (options.strict and verdict.findings) else 0


def _fixed(
    shop: Path, cache: Cache, verdict: Verdict, options: argparse.Namespace
) -> tuple[CorrectedFile, ...]:
    return corrected_files(
        shop, verdict.findings, lambda copy: check(copy, cache, options.today).findings
    )


def _print(
    shop: Path,
    verdict: Verdict,
    fixed: Sequence[CorrectedFile] | None,
    options: argparse.Namespace,
) -> None:
    """Print what was fixed and what is left; a dry run in text is a diff alone."""
    if fixed and options.format != "json":
        show = corrections_as_diff if options.dry_run else corrections_as_text
        to = sys.stdout if options.format == "text" else sys.stderr
        print(show(fixed), end="" if options.dry_run else "\n", file=to)
    if options.dry_run and options.format == "text":
        count = sum(len(one.corrections) for one in fixed or ())
        done = {made.finding for one in fixed or () for made in one.corrections}
        left = len(set(verdict.findings) - done)
        theirs = "1 more finding is" if left == 1 else f"{left} more findings are"
        rest = f"; {theirs} yours to decide: `baytree check` shows what" if left else ""
        print_notes([f"{count} mistake{'' if count == 1 else 's'} would be fixed; "
                     f"nothing was written{rest}"])  # fmt: skip
    else:
        print_findings(shop, verdict, options.format, fixed)
