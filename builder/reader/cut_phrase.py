"""A phrase inside braces that its comma cut in two.

In: the two halves. Out: the whole as the format has it, and the edit that joins them again.
"""

import re

from builder.model.finding import Edit
from builder.model.text import Text
from builder.reader.nodes import Node
from builder.reader.put_right import put_right


def with_its_comma(name: str, head: Node, rest: str) -> str | None:
    """Return a date or an amount that has a comma in it as the format has it."""
    if not isinstance(head, Text):
        return None
    if day := put_right("a date", name, f"{head}, {rest}"):
        return day
    is_amount = re.fullmatch(r"[$€£]?[1-9]\d{0,2}", head) and re.fullmatch(r"\d{3}(?:\.\d+)?", rest)
    return f"{head.lstrip('$€£')}{rest}" if is_amount else None


def joined_phrase(head: Text, key: Text, new: str) -> Edit:
    """Return the edit that joins the two halves of a phrase again, if only a comma is between."""
    at = head.at._replace(end_line=key.at.end_line, end_column=key.at.end_column)
    between = " " * (key.at.column - head.at.end_column - 1)
    quote = '"' if head.at.end_column - head.at.column == len(head) + 2 else ""
    return Edit(at, f"{quote}{head}{quote},{between}{key}", new)
