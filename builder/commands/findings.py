"""A verdict on its way out: its findings in the format asked for, with the lines of their files.

In: a shop and a verdict. Out: text on the standard output, and notes on the error output.
"""

import argparse
import os
import sys
from collections.abc import Iterable
from datetime import date
from functools import partial
from pathlib import Path

from builder.check.verdict import Verdict
from builder.model.correction import CorrectedFile
from builder.reader.put_right import put_right
from builder.reader.source import MAX_FILE_BYTES, file_problem
from builder.report.annotations import findings_as_annotations
from builder.report.as_json import findings_as_json
from builder.report.as_text import color_wanted, elsewhere_note, findings_as_text, waiting_note
from builder.report.sarif import findings_as_sarif


def add_today(parser: argparse.ArgumentParser) -> None:
    """Add the flag by which a check can be made as of another day."""
    parser.add_argument("--today", type=_day, default=date.today(), metavar="DATE",
                        help="date to use for review age (YYYY-MM-DD; default: today)")  # fmt: skip


def _day(text: str) -> date:
    try:
        return date.fromisoformat(text)
    except ValueError:
        example = put_right("a date", "", text) or date.today().isoformat()
        message = f"`{text}` is no date; write year, month and day: {example}"
        raise argparse.ArgumentTypeError(message) from None


def print_findings(
    shop: Path,
    verdict: Verdict,
    format_: str = "text",
    fixed: Iterable[CorrectedFile] | None = None,
) -> None:
    """Write findings to the standard output: text, json, sarif or github.

    Only JSON has a place for what was fixed.
    """
    trees = len(verdict.library.trees)
    match format_:
        case "json":
            text = findings_as_json(verdict.findings, trees, fixed)
        case "sarif":
            text = findings_as_sarif(verdict.findings, _in_repository(shop))
        case "github":
            text = findings_as_annotations(verdict.findings, _in_repository(shop))
        case _:
            color = color_wanted(sys.stdout.isatty(), os.environ)
            text = findings_as_text(
                verdict.findings,
                partial(file_lines, shop),
                trees,
                color=color,
                drafts=verdict.drafts,
            )
            text += waiting_note(len(verdict.waiting)) + elsewhere_note(verdict.elsewhere)
    sys.stdout.write(text)


def print_notes(notes: Iterable[str]) -> None:
    """Write what did not stop the work but must be known."""
    for note in notes:
        print(f"baytree: note: {note}", file=sys.stderr)


def file_lines(shop: Path, file: str) -> list[str]:
    """Return the lines of a file of the shop; none where it can't be read."""
    path = shop / file
    if file_problem(shop, path, MAX_FILE_BYTES):
        return []  # never a line of a file to which a link leads out of the shop
    try:
        return path.read_bytes().decode("utf-8-sig", "replace").split("\n")
    except OSError:
        return []


def _in_repository(shop: Path) -> str:
    """Return the shop's folder in its repository, such as `shop/`; "" where it is the whole."""
    for place in (shop, *shop.parents):
        if (place / ".git").exists():
            inside = shop.relative_to(place).as_posix()
            return "" if inside == "." else f"{inside}/"
    return ""
