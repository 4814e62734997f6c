"""Items of a list that YAML takes as more of the line above, without a word.

In: the lines of a file, and the first and last line of a phrase that goes over several. Out: a
finding on the first of them that starts with a dash.
"""

import re

from builder.model.finding import Finding, edit_in_line, with_edit
from builder.model.text import Position
from builder.reader.source import mistake

ITEM = re.compile(r"( *)- ")


def swallowed_item(file: str, lines: list[str], first: int, last: int) -> Finding | None:
    """Return the finding; lines count from 0."""
    for number in range(first + 1, min(last + 1, len(lines))):
        if match := ITEM.match(lines[number]):
            return _finding(file, lines, first, (number, len(match[1])))
    return None


def _finding(file: str, lines: list[str], first: int, place: tuple[int, int]) -> Finding:
    (number, width), above = place, ITEM.match(lines[first])
    words = lines[first].partition(": ")[2].strip() or lines[first].strip()
    hint = f"start it in column {len(above[1]) + 1}, under the dash above" if above else (
        f"give the words above a line of their own, too: `- {words}`")  # fmt: skip
    finding = mistake(
        "lost-text", Position(file, number + 1, width + 1, number + 1, width + 2),
        "this dash starts no item: the line is read as more of the line above",
        "two lines would be shown as one", hint,
    )  # fmt: skip
    indent = " " * len(above[1]) if above else ""
    edit = edit_in_line(file, number + 1, 1, " " * width, indent) if above else None
    return with_edit(finding, edit)
