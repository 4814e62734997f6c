"""The pictures of the articles as the site has them: drawings as they are, photos scaled down.

In: the shop, the names of its pictures, the cache. Out: files in the folder of the new site. A
photo is scaled down once; the cache keeps the result.
"""

import shutil
from collections.abc import Iterable
from pathlib import Path

import PIL

from builder.cache.database import Cache, put_row, row
from builder.cache.digest import file_digest
from builder.pictures.photos import published_photo
from builder.pictures.problem import PictureProblem

_PICTURES = Path("how-to") / "pictures"
_PHOTO = "photo"  # the kind of rows


def write_pictures(shop: Path, names: Iterable[str], cache: Cache, site: Path) -> None:
    """Write every picture. Raises OSError where a photo is damaged."""
    for name in names:
        original, copy = shop / "kb" / _PICTURES / name, site / _PICTURES / name
        copy.parent.mkdir(parents=True, exist_ok=True)
        if name.lower().endswith(".svg"):
            shutil.copyfile(original, copy)
        else:
            copy.write_bytes(_small_photo(original, cache))


def _small_photo(photo: Path, cache: Cache) -> bytes:
    """Return a photo scaled down; its row depends on the photo and on the imaging library."""
    key = f"{file_digest(photo)} {PIL.__version__}"
    small = row(cache, _PHOTO, key) or published_photo(photo)
    if isinstance(small, PictureProblem):
        raise OSError(f"{photo}: {small.message}: {small.hint}")
    put_row(cache, _PHOTO, key, small)
    return small
