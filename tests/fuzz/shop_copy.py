"""A copy of a shop that is spoiled and restored, again and again.

In: a shop. Out: a folder with a copy of it, and what a check of it left for the next one. Only the
files that were touched are restored.
"""

import shutil
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from PIL import Image

from builder.cache.database import cache_file
from builder.pictures.photos import PHOTO_FORMATS

PARTS = ("trees", "kb", "site_config")
PICTURES = "kb/how-to/pictures"


@dataclass(frozen=True, slots=True)
class ShopCopy:
    """The copy, and how it was at the beginning."""

    place: Path
    files: dict[Path, bytes]  # relative to the shop


def copy_of(shop: Path, place: Path) -> ShopCopy:
    """Copy a shop into a folder of its own, and add a small photo of every kind."""
    for part in PARTS:
        shutil.copytree(shop / part, place / part)
    (place / PICTURES).mkdir(parents=True, exist_ok=True)
    for suffix, kind in PHOTO_FORMATS.items():
        Image.linear_gradient("L").resize((60, 40)).convert("RGB").save(
            place / PICTURES / f"photo-{kind.lower()}{suffix}", kind
        )
    files = (path for path in sorted(place.rglob("*")) if path.is_file())
    return ShopCopy(place, {path.relative_to(place): path.read_bytes() for path in files})


def restore(copy: ShopCopy, touched: Iterable[Path]) -> None:
    """Bring touched paths back to how they were, or take away what was not there."""
    paths = sorted(set(touched), key=lambda path: len(path.parts))
    for path in paths:  # the outermost first: a file may be where a folder was
        at = copy.place / path
        if at.is_dir() and not at.is_symlink():
            shutil.rmtree(at)
        else:
            at.unlink(missing_ok=True)
    for name, content in copy.files.items():
        if any(name.is_relative_to(path) for path in paths):
            (copy.place / name).parent.mkdir(parents=True, exist_ok=True)
            (copy.place / name).write_bytes(content)


def differences(copy: ShopCopy) -> list[Path]:
    """Return the paths that are not as they were."""
    now = {path.relative_to(copy.place): path for path in copy.place.rglob("*")
           if path.is_symlink() or not path.is_dir()}  # fmt: skip
    missing = copy.files.keys() - now.keys()
    changed = (name for name, path in now.items() if not _same(path, copy.files.get(name)))
    return sorted([*missing, *changed])


def _same(path: Path, content: bytes | None) -> bool:
    return path.is_file() and not path.is_symlink() and path.read_bytes() == content


def cache_bytes(copy: ShopCopy) -> bytes:
    """Return what the last check left for the next one."""
    return cache_file(copy.place).read_bytes()


def put_cache(copy: ShopCopy, content: bytes) -> None:
    """Let the next check begin with what an earlier one left, or with b"" from nothing."""
    file = cache_file(copy.place)
    file.unlink(missing_ok=True)
    if content:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content)
