"""A new file of a shop, written only where nothing is.

In: a shop, the name of the file in it, its text. Out: the file, or why none was written.
"""

from pathlib import Path

from builder.authoring.not_written import NotWritten
from builder.reader.source import leads_out


def write_new(shop: Path, name: str, text: str) -> Path | NotWritten:
    """Write a file; an existing one is never overwritten, nor one outside the shop."""
    path = shop / name
    for existing in (path, path.with_suffix(".yaml")):
        if existing.exists() or existing.is_symlink():
            return NotWritten(
                f"{existing.relative_to(shop).as_posix()} already exists, and nothing is"
                " overwritten",
                "open that file, or choose another name",
            )
    if leads_out(shop, path):
        return NotWritten(
            f"{name} would be outside the shop, because a link leads there",
            "delete the link, and put the folder itself in its place",
        )
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text)
    return path
