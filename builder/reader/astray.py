"""Files that look as if they would be read, and are not: each by its name and what to name it.

In: the listings of a shop's folders. Out: a finding for each. The one list of what is read is here.
"""

import re
from collections.abc import Iterable, Iterator
from difflib import get_close_matches
from pathlib import Path

from builder.model.finding import Finding, Related, Severity
from builder.model.text import Position
from builder.reader.folders import UNREAD, listing, no_folder
from builder.reader.source import mistake

KNOWLEDGE = (
    "codes", "conditions", "glossary", "hazards", "lamps", "systems", "tools", "vehicles", "words",
)  # fmt: skip
OF_MANY = {"kb/modules": ".yml", "kb/cases": ".yml", "kb/how-to": ".md"}  # a file a record
FOLDERS = ("trees", "kb", "site_config")
PICTURES = "kb/how-to/pictures"
TAKEN = ("index", "readme")  # the engine makes the page of the folder of these
OVERRIDES = "site_config/overrides/"  # the engine's, and not ours

NAMED = {f"kb/{name}.yml" for name in KNOWLEDGE} | {
    "site_config/shop.yml",
    "site_config/mkdocs.yml",
}
TREE = re.compile(r"trees/(?:[^/.][^/]*/)*[^/.][^/]*\.ya?ml")
SEEMS_READ = re.compile(r".*\.(?:ya?ml|md|markdown)(?:\.txt)?", re.IGNORECASE)
SEEMS_YAML = re.compile(r".*\.ya?ml(?:\.txt)?", re.IGNORECASE)


def shop_files(shop: Path) -> tuple[tuple[str, ...], tuple[Finding, ...]]:
    """Return the files that are read, relative to the shop, and what nobody would read."""
    files: list[str] = []
    findings: list[Finding] = []
    for folder in FOLDERS:
        listed = listing(shop, folder)
        read = [name for name in listed.files if _is_read(name)]
        files += read
        findings += listed.findings
        findings += (_a_folder(name) for name in listed.folders if _is_read(name))
        findings += (no_folder(name) for name in listed.files if name in (*OF_MANY, PICTURES))
        findings += (_misplaced(name) for name in listed.files if _is_astray(name))
        findings += _twins(read)
    there = {finding.at.file for finding in findings}
    if "trees" not in there and not (shop / "trees").is_dir():
        findings.append(_no_trees())
    return tuple(files), tuple(findings)


def _no_trees() -> Finding:
    return mistake("unreadable", "trees", "the shop has no folder `trees/`",
                   "without it there is no tree to check, to show or to find",
                   "make the folder, or go to the shop's own folder")  # fmt: skip


def is_tree(name: str) -> bool:
    """Whether a file is a tree; a table for drafting is none."""
    return _is_read(name) and name.startswith("trees/")


def _is_read(name: str) -> bool:
    folder, _, file = name.rpartition("/")
    if file.startswith(".") or file.partition(".")[0].lower() in TAKEN:
        return False
    if TREE.fullmatch(name):
        return not file.endswith(".table.yml")
    return name in NAMED or Path(file).suffix == OF_MANY.get(folder)


def _is_astray(name: str) -> bool:
    file = name.rpartition("/")[2]
    if _is_read(name) or file.startswith((".#", "._")) or name.endswith(".table.yml"):
        return False
    if name.startswith(f"{PICTURES}/"):
        return "/" in name.removeprefix(f"{PICTURES}/")
    if name.startswith("kb/how-to/"):
        return bool(SEEMS_READ.fullmatch(name))
    return bool(SEEMS_YAML.fullmatch(name)) and not name.startswith(OVERRIDES)


def _a_folder(name: str) -> Finding:
    return mistake("unreadable", name, f"the file `{name}` is a folder",
                   UNREAD, "rename the folder, and put the file here")  # fmt: skip


def _misplaced(name: str) -> Finding:
    return mistake("file-name", name, f"no file of the name `{name}` is read here",
                   "what stands in it drops out of every check, page and search",
                   _place_for(name))  # fmt: skip


def _place_for(name: str) -> str:
    """Say what to name a file so that it is read."""
    folder, _, file = name.rpartition("/")
    stem = re.split(r"\.(?:ya?ml|md|markdown)", file, maxsplit=1, flags=re.IGNORECASE)[0]
    if name.startswith(f"{PICTURES}/"):
        return f"put it into {PICTURES}/ itself"
    if stem.lower() in ("", *TAKEN):
        return "name it by what it is about, in small letters, digits and `-`"
    if name.startswith("trees/"):
        return f"rename it to `{stem.strip('.')}.yml`, in folders whose names begin with no dot"
    if folder in OF_MANY:
        return f"rename it to `{stem.strip('.')}{OF_MANY[folder]}`"
    near = get_close_matches(f"{folder}/{stem}.yml", sorted(NAMED), n=1, cutoff=0.7)
    if near:
        return f"did you mean `{near[0]}`?"
    many = (f"{place}/*{ending}" for place, ending in OF_MANY.items())
    return f"what is read: {', '.join((*sorted(NAMED), *many))}"


def _twins(names: Iterable[str]) -> Iterator[Finding]:
    """Yield the files that would have one id, or one page, with another."""
    first: dict[str, str] = {}
    for name in names:
        other = first.setdefault(_page(name), name)
        if other != name:
            yield Finding(
                "file-name", Severity.ERROR, Position(name, 1, 1, 1, 1),
                f"`{name}` and `{other}` would be one page",
                "only one of the two would be shown, and nobody sees which",
                "rename one of the two, or put both together",
                (Related(Position(other, 1, 1, 1, 1), "the other one"),))  # fmt: skip


def _page(name: str) -> str:
    """Return what names a file's page; some disks do not tell capitals from small letters."""
    folder, _, file = name.rpartition("/")
    stem = file.rpartition(".")[0]
    if folder in OF_MANY:
        stem = re.sub(r"[^A-Za-z0-9]+", "-", stem).strip("-")
    return f"{folder}/{stem}".casefold()
