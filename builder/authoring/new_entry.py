"""A new file of the knowledge to fill in: procedure, module, vehicle, article, closed job.

In: a shop, a kind, a name, the date. Out: the file, or why none was written. Nothing in it is an
error; the check may say that nothing uses it yet.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.new_state import new_state
from builder.authoring.not_written import NotWritten
from builder.reader.trees import read_tree, tree_files

_TEMPLATES = Path(__file__).parent / "templates"
_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_LONGEST_TITLE = 60  # characters; a longer one doesn't fit the head of a chart


@dataclass(frozen=True, slots=True)
class EntryKind:
    """A kind of file that `baytree new` can write."""

    folder: str
    template: str
    example: str  # a name that it may have


ENTRY_KINDS: Mapping[str, EntryKind] = {
    "procedure": EntryKind("kb/procedures", "procedure.yml", "power-and-ground"),
    "module": EntryKind("kb/modules", "module.yml", "eps-module"),
    "vehicle": EntryKind("kb/vehicles", "vehicle.yml", "tern"),
    "how-to": EntryKind("kb/how-to", "how-to.md", "voltage-drop"),
    "state": EntryKind("kb", "state.yml", "rear-seat-down"),
    "case": EntryKind("kb/cases", "case.yml", "2026-0412"),
}


def new_entry(shop: Path, what: str, name: str, today: date) -> Path | NotWritten:
    """Write a file to fill in; `what` is one of `ENTRY_KINDS`."""
    kind = ENTRY_KINDS[what]
    if problem := _bad_name(what, name):
        return problem
    if what == "state":  # they stand in one file
        return new_state(shop, name)
    text = (_TEMPLATES / kind.template).read_text(encoding="utf-8")
    if what == "case":
        tree = _first_tree(shop)
        if tree is None:
            return NotWritten(
                "there is no tree that a job could have followed",
                "write the tree first: `baytree new tree charging/lamp-on`",
            )
        text = text.replace("a-system/a-tree", tree[0]).replace("first-step", tree[1])
    title = name if what == "case" else _title(name)
    text = re.sub("The title *", lambda match: f"{title} ".ljust(len(match[0])), text, count=1)
    text = re.sub(" +$", "", text, flags=re.MULTILINE)
    suffix = Path(kind.template).suffix
    return write_new(shop, f"{kind.folder}/{name}{suffix}", text.replace("2000-01-01", f"{today}"))


def _title(name: str) -> str:
    words = name.replace("-", " ")
    return words[0].upper() + words[1:]


def _first_tree(shop: Path) -> tuple[str, str] | None:
    """Return the ID and the first step of the first tree that can be read."""
    trees = (read_tree(shop, path)[0] for path in tree_files(shop))
    return next(((tree.id, tree.start.id) for tree in trees if tree and tree.steps), None)


def _bad_name(what: str, name: str) -> NotWritten | None:
    if not _NAME.fullmatch(name):
        plain = re.sub(r"[^a-z0-9]+", "-", re.sub(r"\.(yml|md)$", "", name.lower())).strip("-")
        like = plain if _NAME.fullmatch(plain) else ENTRY_KINDS[what].example
        return NotWritten(
            f"`{name}` can't name a {what}: a name has lower-case letters, digits and `-`",
            f"write `{plain}`" if plain == like else f"write it like `{like}`",
        )
    if len(name) > _LONGEST_TITLE:
        return NotWritten(
            f"`{name}` is {len(name)} characters; the limit is {_LONGEST_TITLE}",
            "choose a shorter name",
        )
    return None
