"""Findings on their way out: in the format asked for, with the lines of their files.

In: a shop and what a check found. Out: text on the standard output.
"""

import os
import sys
from pathlib import Path

from builder.commands import Checked
from builder.report.annotations import findings_as_annotations
from builder.report.as_json import findings_as_json
from builder.report.as_text import color_wanted, findings_as_text
from builder.report.sarif import findings_as_sarif


def report(shop: Path, checked: Checked, format_: str) -> None:
    """Write findings to the standard output: text, json, sarif or github."""
    trees = len(checked.library.trees)
    match format_:
        case "json":
            text = findings_as_json(checked.findings, trees)
        case "sarif":
            text = findings_as_sarif(checked.findings, _in_repository(shop))
        case "github":
            text = findings_as_annotations(checked.findings, _in_repository(shop))
        case _:
            color = color_wanted(sys.stdout.isatty(), os.environ)
            text = findings_as_text(
                checked.findings, lambda file: _lines(shop, file), trees, color=color
            )
    sys.stdout.write(text)


def _lines(shop: Path, file: str) -> list[str]:
    path = (shop / file).resolve()
    if not path.is_file() or not path.is_relative_to(shop):
        return []  # never a line of a file to which a link leads out of the shop
    return path.read_text("utf-8-sig", "replace").split("\n")


def _in_repository(shop: Path) -> str:
    """Return the shop's folder in its repository, such as `shop/`; "" where it is the whole."""
    for place in (shop, *shop.parents):
        if (place / ".git").exists():
            inside = shop.relative_to(place).as_posix()
            return "" if inside == "." else f"{inside}/"
    return ""
