"""A new tree to fill in, which passes the check as created.

In: a shop, the ID of the tree, the date. Out: its file, or why none was written.
"""

import re
from datetime import date
from difflib import get_close_matches
from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.not_written import NotWritten
from builder.reader.knowledge_files import read_knowledge

_TEMPLATE = Path(__file__).parent / "templates" / "tree.yml"
_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*")
_LONGEST_TITLE = 60  # characters; a longer one doesn't fit the head of a chart


def new_tree(shop: Path, id_: str, today: date) -> Path | NotWritten:
    """Write a tree to fill in at `trees/<id>.yml`; an existing file is never overwritten."""
    return bad_tree_id(shop, id_) or write_new(
        shop, f"trees/{id_}.yml", filled_template(id_, today)
    )


def bad_tree_id(shop: Path, id_: str) -> NotWritten | None:
    """Return why there can't be a new tree with an ID; None if there can."""
    return _bad_id(id_) or _bad_system(shop, id_.split("/")[0])


def filled_template(id_: str, today: date) -> str:
    """Return the template with title, system, first phrase and date filled in."""
    system, name = id_.split("/")
    words = name.replace("-", " ")
    text = _TEMPLATE.read_text(encoding="utf-8")
    text = _filled(text, "The title", words[0].upper() + words[1:])
    text = _filled(text, "a-system", system)
    text = _filled(text, "words of the customer", f"{system.replace('-', ' ')} {words}")
    return text.replace("2000-01-01", today.isoformat())


def _filled(text: str, placeholder: str, filling: str) -> str:
    """Fill in one placeholder; a comment after it stays in its column if there is room."""

    def fill(match: re.Match[str]) -> str:
        return f"{filling} ".ljust(len(match[0])) if match[1] else filling

    return re.sub(rf"{placeholder}( *)", fill, text, count=1)


def _bad_id(id_: str) -> NotWritten | None:
    name = id_.rpartition("/")[2]
    if not _ID.fullmatch(id_):
        plain = "/".join(_plain(part) for part in id_.strip("/").split("/")[-2:])
        hint = f"write `{plain}`" if _ID.fullmatch(plain) else "write it like `charging/lamp-on`"
        return NotWritten(
            f"`{id_}` can't be a tree ID: an ID is a system, a `/` and a name, in lower-case"
            " letters, digits and `-`",
            hint,
        )
    if len(name) > _LONGEST_TITLE:
        return NotWritten(
            f"`{name}` is {len(name)} characters; the limit is {_LONGEST_TITLE}",
            "choose a shorter name",
        )
    return None


def _plain(text: str) -> str:
    name = text.strip().lower().removesuffix(".yml").removesuffix(".yaml")
    return re.sub(r"[^a-z0-9]+", "-", name).strip("-")


def _bad_system(shop: Path, system: str) -> NotWritten | None:
    systems = sorted(read_knowledge(shop)[0].systems)
    if system in systems:
        return None
    near = get_close_matches(system, systems, n=1)
    hint = f"did you mean `{near[0]}`? If not, add" if near else "add"
    return NotWritten(
        f"kb/systems.yml has no system `{system}`",
        f"{hint} a line `{system}: {{name: ...}}` to kb/systems.yml first",
    )
