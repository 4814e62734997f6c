"""Findings on their way out: in the format asked for, with the lines of their files.

In: a shop and what a check found. Out: text on the standard output.
"""

import os
import sys
from pathlib import Path

from builder.commands import Checked
from builder.reader.source import LARGEST, unfit
from builder.report.annotations import as_annotations
from builder.report.as_json import as_json
from builder.report.sarif import as_sarif
from builder.report.text import as_text, colour_wanted


def report(shop: Path, checked: Checked, format_: str) -> None:
    """Write findings to the standard output: text, json, sarif or github."""
    trees = len(checked.library.trees)
    match format_:
        case "json":
            text = as_json(checked.findings, trees)
        case "sarif":
            text = as_sarif(checked.findings, _in_repository(shop))
        case "github":
            text = as_annotations(checked.findings, _in_repository(shop))
        case _:
            colour = colour_wanted(sys.stdout.isatty(), os.environ)
            text = as_text(checked.findings, lambda file: _lines(shop, file), trees, colour=colour)
    sys.stdout.write(text)


def _lines(shop: Path, file: str) -> list[str]:
    path = shop / file
    if unfit(shop, path, LARGEST):
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
