"""The files and folders that a check is asked about.

In: paths as the author wrote them. Out: their names in the shop, and whether a finding is in one.
"""

import os
from collections.abc import Collection
from pathlib import Path

from builder.reader.file_names import shop_files


def name_in_shop(shop: Path, path: Path) -> str:
    """Return the name of a file or folder as findings have it, with all links followed.

    Raises FileNotFoundError where it doesn't exist, isn't in the shop, or is a folder with nothing
    to check: no finding would then look like a sound tree.
    """
    # Not Path.resolve: before Python 3.13 that raises RuntimeError on a link to itself.
    file = Path(os.path.realpath(path))
    if not file.exists():
        raise FileNotFoundError(f"{path} doesn't exist, or is a broken link")
    if not file.is_relative_to(shop):
        raise FileNotFoundError(f"{path} isn't in the shop {shop}")
    name = file.relative_to(shop).as_posix()
    if file.is_dir() and not any(is_in(known, [name]) for known in shop_files(shop)[0]):
        raise FileNotFoundError(
            f"{path} is a folder with nothing to check: name a tree's file, or a folder with trees"
        )
    return name


def is_in(file: str, names: Collection[str]) -> bool:
    """Whether a file is one of those named, or in a folder named; the shop itself is `.`."""
    return any(name in (file, ".") or file.startswith(f"{name}/") for name in names)
