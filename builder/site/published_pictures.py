"""The pictures of the articles as the site has them: drawings as they are, photos scaled down.

In: the shop, the names of its pictures, the cache. Out: files in the folder of the new site, or one
as bytes. A photo is scaled down once; the cache keeps the result.
"""

from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path

import PIL

from builder.cache.database import Cache, put_row, row
from builder.cache.digest import file_digest
from builder.pictures.photos import published_photo
from builder.pictures.problem import PictureProblem

PICTURES = Path("how-to") / "pictures"
_PHOTO = "photo"  # the kind of rows
_PHOTOS_KEPT = 200  # in memory, while pages are served from there


def write_pictures(shop: Path, names: Iterable[str], cache: Cache, site: Path) -> None:
    """Write every picture. Raises OSError where a photo is damaged."""
    for name in names:
        original, copy = shop / "kb" / PICTURES / name, site / PICTURES / name
        copy.parent.mkdir(parents=True, exist_ok=True)
        copy.write_bytes(
            original.read_bytes() if _is_drawing(name) else _cached_photo(original, cache)
        )


def published_picture(shop: Path, name: str) -> bytes:
    """Return a picture as the site has it. Raises OSError where a photo is damaged."""
    original = shop / "kb" / PICTURES / name
    if _is_drawing(name):
        return original.read_bytes()
    return _small_photo(original, file_digest(original))


def _is_drawing(name: str) -> bool:
    return name.lower().endswith(".svg")


def _cached_photo(photo: Path, cache: Cache) -> bytes:
    """Return a photo scaled down; its row depends on the photo and on the imaging library."""
    content = file_digest(photo)
    key = f"{content} {PIL.__version__}"
    small = row(cache, _PHOTO, key) or _small_photo(photo, content)
    put_row(cache, _PHOTO, key, small)
    return small


@lru_cache(_PHOTOS_KEPT)
def _small_photo(photo: Path, _content: str) -> bytes:
    small = published_photo(photo)
    if isinstance(small, PictureProblem):
        raise OSError(f"{photo}: {small.message}: {small.hint}")
    return small
