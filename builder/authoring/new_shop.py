"""A new shop: settings, some knowledge to start with, and no tree yet, or a few examples.

In: a folder. Out: the files written, or why none was. Existing files are never overwritten.
"""

from pathlib import Path

from builder.authoring.not_written import NotWritten

_TEMPLATE = Path(__file__).parent / "templates" / "shop"
_EXAMPLES = Path(__file__).parent / "templates" / "examples"
# Packaging would leave out a template whose name starts with a dot.
_DOTTED = {"gitignore": ".gitignore", "gitkeep": ".gitkeep"}


def new_shop(folder: Path, *, with_examples: bool = False) -> tuple[Path, ...] | NotWritten:
    """Write a new shop into a folder, which may exist and hold other files."""
    files = _targets(folder, _TEMPLATE) | (_targets(folder, _EXAMPLES) if with_examples else {})
    existing = _in_the_way(folder, files)
    if existing:
        return NotWritten(
            f"{existing} already exists, and nothing is overwritten",
            "choose a new folder; if this is a shop already, `baytree new tree` adds a tree to it",
        )
    for path, template in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(template.read_bytes())
    return tuple(files)


def _targets(folder: Path, templates: Path) -> dict[Path, Path]:
    """Return the template of every file to write."""
    inside = (path.relative_to(templates) for path in sorted(templates.rglob("*"))
              if path.is_file())  # fmt: skip
    return {folder / path.with_name(_DOTTED.get(path.name, path.name)): templates / path
            for path in inside}  # fmt: skip


def _in_the_way(folder: Path, files: dict[Path, Path]) -> Path | None:
    """Return the first path in the way: a file to write, or a file where a folder must be."""
    folders = {parent for path in files for parent in path.parents if parent.is_relative_to(folder)}
    blocked = (path for path in sorted(folders) if _is_no_folder(path, folder))
    existing = (path for path in files if path.exists() or path.is_symlink())
    return next(blocked, None) or next(existing, None)


def _is_no_folder(path: Path, shop: Path) -> bool:
    """Return whether a file, or a link that may lead out of the shop, is where a folder must be."""
    is_inner_link = path.is_symlink() and path != shop
    return is_inner_link or (path.exists() and not path.is_dir())
