"""Where a command works: the shop's folder, the files it writes, paths as the user sees them.

In: the flag `--shop`, and the current folder. Out: paths.
"""

import os
from argparse import Namespace
from pathlib import Path

from builder.rules.shared.close_names import closest_names


def shop_of(options: Namespace) -> Path:
    """Find the shop: the folder given, or the nearest one upward that has trees.

    Raises FileNotFoundError.
    """
    start = Path(options.shop or ".").resolve()
    for place in [start] if options.shop else [start, *start.parents]:
        if (place / "site_config").is_dir() or (place / "trees").is_dir():
            return place
    if options.shop and not start.exists():
        raise FileNotFoundError(f"there is no folder `{options.shop}`{_meant(start)}")
    raise FileNotFoundError(
        f"no shop found: {start} has no trees/ and no site_config/ folder; "
        "change to your shop's folder, or create a shop with `baytree start DIR`"
    )


def _meant(folder: Path) -> str:
    """Offer the folders beside one that doesn't exist."""
    near = folder.parent
    names = [one.name for one in near.iterdir() if one.is_dir()] if near.is_dir() else []
    close = " or ".join(f"`{near / name}`" for name in closest_names(folder.name, names))
    return f"; did you mean {close}?" if close else ""


def from_here(path: Path) -> Path:
    """Return a path relative to the current folder, if it's in there."""
    here = Path.cwd()
    return path.relative_to(here) if path.is_relative_to(here) else path


def write_output(folder: Path, name: str, content: bytes) -> Path:
    """Write a file into a command's output folder and return its path.

    Raises FileExistsError where the folder, or anything in it on the way to the file, is a link to
    somewhere else: it may have come with a pull request.
    """
    path = folder / name
    inside = Path(os.path.realpath(path)).is_relative_to(os.path.realpath(folder))
    if folder.is_symlink() or path.is_symlink() or not inside:
        link = folder if folder.is_symlink() else path
        raise FileExistsError(
            f"{link} is a link, or behind one: delete the link, or name another folder with --out"
        )
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
    return path
