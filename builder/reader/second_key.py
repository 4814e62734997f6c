"""A key that a map has twice, and what the author most likely left out above it.

In: the key, its value and the first one, and the lines of the file. Out: the finding; whether what
follows the key belongs to something else, so that nothing more is said of it.
"""

import re
from collections.abc import Sequence

from builder.model.finding import Finding, Related, Severity, edit_in_line
from builder.model.text import Text
from builder.reader.line_forms import words_of_the_format
from builder.reader.nodes import Node

KINDS = ("check", "action", "fix", "stop", "return")  # a step begins with one of these
NAME_AS_COMMENT = re.compile(r"( *)# ?( *)([A-Za-z0-9_-]+):\s*")
UNCLEAR = "only one of them would count, and you can't tell which"


def second_key(key: Text, first: Text, lines: Sequence[str]) -> tuple[Finding, bool]:
    """Return the finding for a key that is there already, and whether all that follows is lost."""
    related = Related(first.at, "first defined here")
    if key in KINDS:
        return _without_a_name(key, first, lines), True
    hint = "rename one of them, or merge the two"
    if key in words_of_the_format():
        hint = "keep one of the two lines"
    return Finding("duplicate-key", Severity.ERROR, key.at, f"`{key}` is defined twice",
                   UNCLEAR, hint, (related,)), False  # fmt: skip


def _without_a_name(key: Text, first: Text, lines: Sequence[str]) -> Finding:
    """Return the finding for a step whose name is missing above its kind, or is a comment."""
    related = Related(first.at, "the step above begins here")
    between = range(key.at.line - 2, first.at.line - 1, -1)
    names = ((at + 1, NAME_AS_COMMENT.fullmatch(lines[at])) for at in between)
    line, name = next(((line, name) for line, name in names if name), (0, None))
    if name:
        return Finding("duplicate-key", Severity.ERROR, key.at,
                       f"the name `{name[3]}` above this `{key}` is commented out, in line {line}",
                       "two steps became one, and half of each would be lost",
                       f"delete the `#` in line {line}, or comment out the lines of the step, too",
                       (related,))  # fmt: skip
    return Finding("duplicate-key", Severity.ERROR, key.at, f"`{key}` is defined twice in one step",
                   UNCLEAR, "if a step begins here, write its name on a line above, such as "
                   f"`{' ' * max(key.at.column - 3, 0)}belt:`; else keep one of the two",
                   (related,))  # fmt: skip


def item_without_dash(key: Text, value: Node, first: Text) -> Finding:
    """Return the finding for a second item of a list, whose dash was forgotten."""
    words = value if isinstance(value, Text) else "..."
    return Finding(
        "duplicate-key", Severity.ERROR, key.at, f"there is no dash before this `{key}`",
        f"it would be a second `{key}` of the same item, and one of them would be lost",
        f"put a dash in place of the space in column {key.at.column - 2}, so that it looks "
        f"like line {first.at.line}: `{' ' * (key.at.column - 3)}- {key}: {words}`",
        (Related(first.at, "the item above starts here"),),
        edit=edit_in_line(key.at.file, key.at.line, key.at.column - 2, "  ", "- "))  # fmt: skip
