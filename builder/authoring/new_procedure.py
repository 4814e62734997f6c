"""A new procedure to fill in; the check only says that nothing runs it yet.

In: a shop, the name of the procedure, the date. Out: its file, or why none was written.
"""

import re
from datetime import date
from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.not_written import NotWritten

_TEMPLATE = Path(__file__).parent / "templates" / "procedure.yml"
_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_LONGEST_TITLE = 60  # characters; a longer one doesn't fit the head of a chart


def new_procedure(shop: Path, name: str, today: date) -> Path | NotWritten:
    """Write a procedure to fill in at `kb/procedures/<name>.yml`."""
    if not _NAME.fullmatch(name):
        plain = re.sub(r"[^a-z0-9]+", "-", name.lower().removesuffix(".yml")).strip("-")
        return NotWritten(
            f"`{name}` can't name a procedure: a name has lower-case letters, digits and `-`",
            f"write `{plain}`" if _NAME.fullmatch(plain) else "write it like `power-and-ground`",
        )
    if len(name) > _LONGEST_TITLE:
        return NotWritten(
            f"`{name}` is {len(name)} characters; the limit is {_LONGEST_TITLE}",
            "choose a shorter name",
        )
    words = name.replace("-", " ")
    text = _TEMPLATE.read_text(encoding="utf-8")
    text = text.replace("The title ", f"{words[0].upper()}{words[1:]} ".ljust(10), 1)
    text = text.replace("2000-01-01", today.isoformat())
    return write_new(shop, f"kb/procedures/{name}.yml", text)
