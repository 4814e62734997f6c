"""Which files of a shop are read, by their names, and which only look like it.

In: the listings of a shop's folders. Out: the files to read, and a finding for every file that an
author would expect to be read and isn't.
"""

import re
from collections.abc import Iterable, Iterator
from difflib import get_close_matches
from pathlib import Path

from builder.model.finding import Finding, Related, Severity
from builder.model.text import Position
from builder.reader.folders import UNREAD, listing, not_a_folder
from builder.reader.source import mistake

KNOWLEDGE = (
    "codes", "conditions", "glossary", "hazards", "lamps", "parts", "specs", "systems", "tools",
    "words",
)  # fmt: skip
OF_MANY = {
    "kb/modules": ".yml",
    "kb/cases": ".yml",
    "kb/how-to": ".md",
    "kb/procedures": ".yml",
    "kb/vehicles": ".yml",
}  # a file a record
# What the trees call by the name of its file.
NAMED_BY_FILE = {
    "kb/modules": "module",
    "kb/procedures": "procedure",
    "kb/vehicles": "vehicle",
}
FOLDERS = ("trees", "kb", "site_config")
PICTURES = "kb/how-to/pictures"
RESERVED = ("index", "readme")  # the site engine makes a folder's own page from these
# Windows keeps no file of these names, whatever its ending (Microsoft, "Naming Files, Paths, and
# Namespaces"; from memory).
DEVICES = re.compile(r"con|prn|aux|nul|(?:com|lpt)[1-9]")
OVERRIDES = "site_config/overrides/"  # the site engine's

NAMED = {f"kb/{name}.yml" for name in KNOWLEDGE} | {
    "site_config/shop.yml",
    "site_config/mkdocs.yml",
}
TREE = re.compile(r"trees/(?:[^/.][^/]*/)*[^/.][^/]*\.ya?ml")
ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
# As programs name a file that is saved or pasted twice.
COPY = re.compile(
    r"copy of (.+)|(.+?)[ _-]+\(?copy\)?(?: ?\(?\d+\)?)?|(.+?) ?\(\d+\)", re.IGNORECASE
)
SEEMS_READ = re.compile(r".*\.(?:ya?ml|md|markdown)(?:\.txt)?", re.IGNORECASE)
SEEMS_YAML = re.compile(r".*\.ya?ml(?:\.txt)?", re.IGNORECASE)


def shop_files(shop: Path) -> tuple[tuple[str, ...], tuple[Finding, ...]]:
    """Return the files to read, relative to the shop, and a finding for each misplaced one."""
    files: list[str] = []
    findings: list[Finding] = []
    for folder in FOLDERS:
        below = listing(shop, folder)
        names = [name for name in below.files if _is_read(name)]
        files += names
        findings += below.findings
        findings += (_a_folder(name) for name in below.folders if _is_read(name))
        findings += (not_a_folder(name) for name in below.files if name in (*OF_MANY, PICTURES))
        findings += (_misplaced(name) for name in below.files if _is_misplaced(name))
        findings += _same_page(names)
        findings += (_no_id(name) for name in names if _is_no_id(name))
        findings += (_a_device(name, part) for name in names if (part := _device_in(name)))
    reported = {finding.at.file for finding in findings}
    if "trees" not in reported and not (shop / "trees").is_dir():
        findings.append(_no_trees())
    return tuple(files), tuple(findings)


def _no_trees() -> Finding:
    return mistake("unreadable", "trees", "the shop has no folder `trees/`",
                   "there is no tree to check, show, or find",
                   "create the folder, or change to the shop's folder")  # fmt: skip


def is_tree(name: str) -> bool:
    """Whether a file is a tree; a drafting table (`*.table.yml`) isn't."""
    return _is_read(name) and name.startswith("trees/")


def _is_read(name: str) -> bool:
    folder, _, file = name.rpartition("/")
    if file.startswith(".") or _copied(file) or file.partition(".")[0].lower() in RESERVED:
        return False
    if TREE.fullmatch(name):
        return not file.endswith(".table.yml")
    return name in NAMED or Path(file).suffix == OF_MANY.get(folder)


def _copied(file: str) -> str:
    """Return the name of the file that a file is a copy of, by its name; "" for no copy."""
    stem, _, ending = file.rpartition(".")
    match = None if ID.fullmatch(stem) else COPY.fullmatch(stem)
    return f"{next(filter(None, match.groups())).strip(' _-')}.{ending}" if match else ""


def _is_no_id(name: str) -> bool:
    """Whether a tree has a name that no branch can lead to, or a record one that none writes."""
    folder, *others = name.rpartition(".")[0].split("/")
    if name.rpartition("/")[0] in NAMED_BY_FILE:
        return not ID.fullmatch(others[-1])
    return folder == "trees" and not all(ID.fullmatch(part) for part in others)


def _no_id(name: str) -> Finding:
    if not name.startswith("trees/"):
        folder, _, file = name.rpartition("/")
        stem, _, ending = file.rpartition(".")
        kind = NAMED_BY_FILE[folder]
        return mistake("file-name", name, f"`{stem}` can't be the name of a {kind}",
                       f"trees that write `{_plain(stem)}` don't find it",
                       f"rename it to `{_plain(stem)}.{ending}`: lowercase letters, digits, "
                       "and `-`")  # fmt: skip
    right = "/".join(_plain(part) for part in name.rpartition(".")[0].split("/"))
    return mistake("file-name", name, f"`{_tree_part(name)}` can't be the ID of a tree",
                   "no branch, link, or search could name this tree",
                   f"rename it to `{right}.yml`: lowercase letters, digits, and `-`")  # fmt: skip


def _device_in(name: str) -> str:
    """Return the part of a file's name that Windows keeps for a device; "" where it has none."""
    stems = (part.partition(".")[0] for part in name.split("/"))
    return next((stem for stem in stems if DEVICES.fullmatch(stem.lower())), "")


def _a_device(name: str, part: str) -> Finding:
    return mistake("file-name", name, f"Windows can't keep a file or folder named `{part}`",
                   "nobody could open this shop on a Windows PC",
                   f"give it a longer name, such as `{part}-2`")  # fmt: skip


def _tree_part(name: str) -> str:
    return name.removeprefix("trees/").rpartition(".")[0]


def _plain(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")


def _is_misplaced(name: str) -> bool:
    file = name.rpartition("/")[2]
    if _is_read(name) or file.startswith((".#", "._")) or name.endswith(".table.yml"):
        return False
    if name.startswith(f"{PICTURES}/"):
        return "/" in name.removeprefix(f"{PICTURES}/")
    if name.startswith("kb/how-to/"):
        return bool(SEEMS_READ.fullmatch(name))
    return bool(SEEMS_YAML.fullmatch(name)) and not name.startswith(OVERRIDES)


def _a_folder(name: str) -> Finding:
    return mistake("unreadable", name, f"`{name}` must be a file, but it's a folder",
                   UNREAD, "rename the folder, then put the file here")  # fmt: skip


def _misplaced(name: str) -> Finding:
    file = name.rpartition("/")[2]
    message = f"no file named `{name}` is read here"
    if _copied(file):
        message = f"`{file}` looks like a copy, so it isn't read"
    return mistake("file-name", name, message, UNREAD,
                   _place_for(name))  # fmt: skip


def _place_for(name: str) -> str:
    """Return the hint that says where a misplaced file belongs."""
    folder, _, file = name.rpartition("/")
    stem = re.split(r"\.(?:ya?ml|md|markdown)", file, maxsplit=1, flags=re.IGNORECASE)[0]
    if name.startswith(f"{PICTURES}/"):
        return f"move it to {PICTURES}/ itself"
    if stem.lower() in ("", *RESERVED):
        return "name it after its subject, in lowercase letters, digits, and `-`"
    if original := _copied(file):
        return (
            f"if it's a file of its own, rename it to `{_plain(stem)}.{file.rpartition('.')[2]}`; "
            f"if it's a copy of `{original}`, delete it"
        )
    if name.startswith("trees/"):
        is_hidden = any(part.startswith(".") for part in folder.split("/"))
        where = ", in a folder with no leading dot" if is_hidden else ""
        return f"rename it to `{stem.strip('.')}.yml`{where}"
    if folder in OF_MANY:
        return f"rename it to `{stem.strip('.')}{OF_MANY[folder]}`"
    near = get_close_matches(f"{folder}/{stem}.yml", sorted(NAMED), n=1, cutoff=0.7)
    if near:
        return f"did you mean `{near[0]}`?"
    many = (f"{place}/*{ending}" for place, ending in OF_MANY.items())
    return f"files that are read: {', '.join((*sorted(NAMED), *many))}"


def meant_name(name: str) -> str:
    """Return the name that a file most likely should have, without its ending."""
    folder, _, file = name.rpartition("/")
    stem = re.split(r"\.(?:ya?ml|md|markdown)", file, maxsplit=1, flags=re.IGNORECASE)[0]
    return f"{folder}/{_plain(stem)}"


def _same_page(names: Iterable[str]) -> Iterator[Finding]:
    """Yield a finding for every file that has the ID or the page of another one."""
    first: dict[str, str] = {}
    for name in names:
        other = first.setdefault(_page(name), name)
        if other != name:
            yield Finding(
                "file-name", Severity.ERROR, Position(name, 1, 1, 1, 1),
                f"`{name}` and `{other}` would become the same page",
                "only one of them would be shown, and you can't tell which",
                "rename one of them, or merge the two",
                (Related(Position(other, 1, 1, 1, 1), "the other file"),))  # fmt: skip


def _page(name: str) -> str:
    """Return the name of a file's page; some disks ignore case, so this does too."""
    folder, _, file = name.rpartition("/")
    stem = file.rpartition(".")[0]
    if folder in OF_MANY:
        stem = re.sub(r"[^A-Za-z0-9]+", "-", stem).strip("-")
    return f"{folder}/{stem}".casefold()
