"""A new tree to fill in, sound from the first line.

In: a shop, the id of the tree and the day. Out: its file, or why none was written.
"""

import re
from datetime import date
from difflib import get_close_matches
from pathlib import Path

from builder.authoring.not_written import Refused
from builder.reader.shop_files import read_knowledge

TEMPLATE = Path(__file__).parent / "templates" / "tree.yml"
ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*/[a-z0-9]+(-[a-z0-9]+)*")
LONGEST = 60  # signs of a title; beyond it, it is too long for the head of a chart


def new_tree(shop: Path, id_: str, today: date) -> Path | Refused:
    """Write a tree to fill in at `trees/<id>.yml`; a file that stands there is not touched."""
    refused = _bad_id(id_) or _bad_system(shop, id_.split("/")[0])
    path = shop / "trees" / f"{id_}.yml"
    if refused:
        return refused
    for standing in (path, path.with_suffix(".yaml")):
        if standing.exists() or standing.is_symlink():
            return Refused(
                f"trees/{id_}{standing.suffix} is already there, and nothing is written over",
                "open that one, or choose another name",
            )
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8", newline="\n") as file:
        file.write(text_of(id_, today))
    return path


def text_of(id_: str, today: date) -> str:
    """Return the template with the title, the system, a first phrase and the day filled in."""
    system, slug = id_.split("/")
    words = slug.replace("-", " ")
    text = TEMPLATE.read_text(encoding="utf-8")
    text = _filled(text, "The title", words[0].upper() + words[1:])
    text = _filled(text, "a-system", system)
    text = _filled(text, "words of the customer", f"{system.replace('-', ' ')} {words}")
    return text.replace("2000-01-01", today.isoformat())


def _filled(text: str, placeholder: str, filling: str) -> str:
    """Fill in one placeholder; a comment behind it stays in its column where there is room."""

    def fill(found: re.Match[str]) -> str:
        return f"{filling} ".ljust(len(found[0])) if found[1] else filling

    return re.sub(rf"{placeholder}( *)", fill, text, count=1)


def _bad_id(id_: str) -> Refused | None:
    slug = id_.rpartition("/")[2]
    if not ID.fullmatch(id_):
        plain = "/".join(_slug(part) for part in id_.strip("/").split("/")[-2:])
        hint = f"write `{plain}`" if ID.fullmatch(plain) else "write it like `charging/lamp-on`"
        return Refused(
            f"`{id_}` cannot be the name of a tree: it is a system and a name with a `/` between,"
            " in small letters, digits and `-`",
            hint,
        )
    if len(slug) > LONGEST:
        return Refused(
            f"`{slug}` has {len(slug)} signs; a title has room for {LONGEST}",
            "choose a shorter name",
        )
    return None


def _slug(text: str) -> str:
    name = text.strip().lower().removesuffix(".yml").removesuffix(".yaml")
    return re.sub(r"[^a-z0-9]+", "-", name).strip("-")


def _bad_system(shop: Path, system: str) -> Refused | None:
    known = sorted(read_knowledge(shop)[0].systems)
    if system in known:
        return None
    near = get_close_matches(system, known, n=1)
    hint = f"did you mean `{near[0]}`? " if near else ""
    return Refused(
        f"there is no system `{system}` in kb/systems.yml",
        f"{hint}Add a line `{system}: {{name: ...}}` to kb/systems.yml first",
    )
