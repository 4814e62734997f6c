"""Items of a list that YAML takes as more of the line above, without a word.

In: the text of a file, and the spans of quoted text and text blocks. Out: findings.
"""

import re
from collections.abc import Iterator

from builder.model.finding import Finding, edit_in_line, with_edit
from builder.model.text import Position
from builder.reader.source import Source, mistake

# A line that ends in a phrase, and a line further right that starts with a dash.
PHRASE = r"(?:[\w-]+: )?([^\s#\"'\[{|>&*!-][^\n#]*[^\s:>|{\[,])[ \t]*\n"
SWALLOWED = re.compile(rf"(?m)^( *(?:- )?){PHRASE}(?=( +)- )")


def swallowed_items(source: Source, text: str, spans: list[tuple[int, int]]) -> Iterator[Finding]:
    """Yield a finding for every item that is no item."""
    for match in SWALLOWED.finditer(text):
        at, width = match.start(3), len(match[3])
        above = len(match[1]) - len(match[1].lstrip(" "))
        if width <= above or any(begin <= at < end for begin, end in spans):
            continue
        is_item = "-" in match[1]
        hint = f"start it in column {above + 1}, under the dash above" if is_item else (
            f"give the words above a line of their own, too: `- {match[2].strip()}`")  # fmt: skip
        line = text.count("\n", 0, at) + 1
        finding = mistake(
            "lost-text", Position(source.file, line, width + 1, line, width + 2),
            "this dash starts no item: the line is read as more of the line above",
            "two lines would be shown as one", hint,
        )  # fmt: skip
        edit = edit_in_line(source.file, line, 1, " " * width, " " * above) if is_item else None
        yield with_edit(finding, edit)
