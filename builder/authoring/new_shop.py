"""A new shop: settings, knowledge to begin with, and no tree yet.

In: a folder. Out: the files written, or why none was. Nothing that stands there is written over.
"""

from pathlib import Path

from builder.authoring.not_written import Refused

TEMPLATE = Path(__file__).parent / "templates" / "shop"
# A leading dot would hide the template from packaging.
NAMES = {"gitignore": ".gitignore", "gitkeep": ".gitkeep"}


def start(folder: Path) -> tuple[Path, ...] | Refused:
    """Write a new shop into a folder, which may exist; what is not ours in it stays as it is."""
    files = {folder / _name(path): path for path in sorted(TEMPLATE.rglob("*")) if path.is_file()}
    standing = _standing(folder, files)
    if standing:
        return Refused(
            f"{standing} is already there, and nothing is written over",
            "choose a new folder; if this is a shop already, `baytree new tree` adds to it",
        )
    for path, template in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(template.read_bytes())
    return tuple(files)


def _name(path: Path) -> Path:
    inside = path.relative_to(TEMPLATE)
    return inside.with_name(NAMES.get(inside.name, inside.name))


def _standing(folder: Path, files: dict[Path, Path]) -> Path | None:
    """Return the first thing that is in the way: a file of ours, or a file where a folder goes."""
    folders = {parent for path in files for parent in path.parents if parent.is_relative_to(folder)}
    blocked = (path for path in sorted(folders) if path.exists() and not path.is_dir())
    there = (path for path in files if path.exists() or path.is_symlink())
    return next(blocked, None) or next(there, None)
