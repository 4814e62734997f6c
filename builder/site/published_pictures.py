"""The pictures of the articles as they are published: drawings as they are, photos made small.

In: the shop, the names of its pictures, the cache. Out: files in the folder of the new site. A
photo is made small once.
"""

import shutil
from collections.abc import Iterable
from pathlib import Path

import PIL

from builder.cache.database import Cache, put_row, row
from builder.cache.digest import file_digest
from builder.pictures.photos import published
from builder.pictures.unfit import Unfit

PICTURES = Path("how-to") / "pictures"
PHOTO = "photo"  # the kind of rows


def write_pictures(shop: Path, names: Iterable[str], cache: Cache, site: Path) -> None:
    """Write every picture. Raises OSError where a photo turns out to be damaged."""
    for name in names:
        original, copy = shop / "kb" / PICTURES / name, site / PICTURES / name
        copy.parent.mkdir(parents=True, exist_ok=True)
        if name.lower().endswith(".svg"):
            shutil.copyfile(original, copy)
        else:
            copy.write_bytes(_small(original, cache))


def _small(photo: Path, cache: Cache) -> bytes:
    """Return a photo made small; it is kept under its content and what made it small."""
    key = f"{file_digest(photo)} {PIL.__version__}"
    small = row(cache, PHOTO, key) or published(photo)
    if isinstance(small, Unfit):
        raise OSError(f"{photo}: {small.message}: {small.hint}")
    put_row(cache, PHOTO, key, small)
    return small
