"""The first version of the format, which isn't read any more.

In: a text of an author. Out: the finding for `format: 1`, and what an old word is called now. An
old word is refused like any other unknown one; the table only serves its message.
"""

from builder.model.finding import Finding
from builder.model.text import Position
from builder.reader.source import mistake

FIRST_VERSION = "1"
CALLED_NOW = {
    "could_not": "cannot_test",
    "initialise": "initialize",
    "labour_rate": "labor_rate",
    "colour": "color",
}


def old_format(at: Position) -> Finding:
    """Return the finding for a file in the first version."""
    then = "and correct what the check finds then"
    if at.file.startswith("trees/"):
        then = ("write states in `when` (`key-on`, not `key on`), move their cautions to "
                "kb/conditions.yml, and add `drive` and `why`")  # fmt: skip
    return mistake("old-format", at, "`format: 1` isn't read any more",
                   "its conditions were only words: the walk couldn't tell what to switch on, or "
                   "what to warn of",
                   f"delete this line, {then}: see `baytree rules old-format`")  # fmt: skip


def new_word(word: str) -> str | None:
    """Return what an old word is called now, such as `initialise eps-module`."""
    first, blank, rest = word.partition(" ")
    new = CALLED_NOW.get(first)
    return f"{new}{blank}{rest}" if new else None
