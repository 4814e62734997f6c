"""A photo, as from a phone: whether it is one, and the small plain one that is published for it.

In: a file of pixels. Out: why it cannot be used, or bytes of the same kind of file, upright, at
most 1600 pixels on the long side and 300 KiB, with nothing in it of where and by whom it was taken.
"""

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

from builder.pictures.unfit import Unfit

KINDS = {
    ".jpg": "JPEG",
    ".jpeg": "JPEG",
    ".png": "PNG",
    ".webp": "WEBP",
    ".avif": "AVIF",
    ".gif": "GIF",
}
LARGEST = 32 * 1024 * 1024  # bytes of a file; a phone's finest photo has about 20 MiB
MOST_PIXELS = 64_000_000  # 50 megapixels of a phone, and some; unpacked that is 256 MB at most
PUBLISHED = 300 * 1024  # bytes: a second and a half over the 1.6 Mbit/s of a phone behind a wall
# Pixels on the long side, and quality: tried in turn until the photo is small enough.
TRIES = ((1600, 82), (1600, 65), (1200, 65), (800, 60), (500, 50))
JPEG_PIXELS, JPEG_END = b"\xff\xda", b"\xff\xd9"  # marks of ITU-T T.81
AGAIN = "take it again, or save it anew from a program for pictures"
OPENING = (OSError, SyntaxError, ValueError, EOFError, Image.DecompressionBombError, MemoryError)


def unfit_photo(path: Path) -> Unfit | None:
    """Return why a photo cannot be used; its pixels are not unpacked, `published` does that."""
    try:
        with _opened(path) as image:
            wrong = _too_large(image)
            image.verify()
    except OPENING as error:
        return _unreadable(path, error)
    cut_off = KINDS[path.suffix.lower()] == "JPEG" and not _ends(path.read_bytes())
    return wrong or (_damaged(path) if cut_off else None)


def _ends(jpeg: bytes) -> bool:
    """Whether the end mark comes after the pixels; a small picture in its head has one too."""
    return JPEG_END in jpeg[max(jpeg.rfind(JPEG_PIXELS), 0) :]


def _damaged(path: Path) -> Unfit:
    kind = KINDS[path.suffix.lower()]
    return Unfit(f"this {kind} file is damaged or cut off", AGAIN)


def published(path: Path) -> bytes | Unfit:
    """Return the photo as it is published, or why it cannot be."""
    try:
        with _opened(path) as image:
            return _too_large(image) or _small(image, KINDS[path.suffix.lower()])
    except OPENING as error:
        return _unreadable(path, error)


@contextmanager
def _opened(path: Path) -> Iterator[Image.Image]:
    """Open a photo as the one kind that its name says, so that no other decoder is reached."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # of notes of the camera, and of size: bounded here
        with Image.open(path, formats=[KINDS[path.suffix.lower()]]) as image:
            yield image


def _too_large(image: Image.Image) -> Unfit | None:
    width, height = image.size
    return _more_than_most() if width * height > MOST_PIXELS else None


def _more_than_most() -> Unfit:
    return Unfit(f"this photo has more than {MOST_PIXELS // 1_000_000} million pixels",
                 "make it smaller; 1600 on the long side are shown")  # fmt: skip


def _unreadable(path: Path, error: BaseException) -> Unfit:
    kind = KINDS[path.suffix.lower()]
    if isinstance(error, Image.DecompressionBombError):
        return _more_than_most()
    if isinstance(error, UnidentifiedImageError):
        return Unfit(f"this is not the {kind} file that its name says", AGAIN)
    return _damaged(path)


def _small(image: Image.Image, kind: str) -> bytes:
    """Write the pixels anew, and nothing else, in the first size that is small enough."""
    if image.mode in ("P", "1"):
        image = image.convert("RGBA")  # colors by number cannot be mixed
    image.thumbnail((TRIES[0][0],) * 2)
    plain = ImageOps.exif_transpose(image)
    plain = plain.convert("RGBA" if _has_clear_parts(plain) and kind != "JPEG" else "RGB")
    content = b""
    for side, quality in TRIES:
        plain.thumbnail((side, side))
        content = _written(plain, kind, quality)
        if len(content) <= PUBLISHED:
            break
    return content


def _has_clear_parts(image: Image.Image) -> bool:
    return "A" in image.mode or "transparency" in image.info


def _written(image: Image.Image, kind: str, quality: int) -> bytes:
    bare = Image.new(image.mode, image.size)
    bare.paste(image)  # leaves behind the notes that a decoder keeps beside the pixels
    if kind in ("PNG", "GIF") and (kind == "GIF" or quality < TRIES[0][1]):
        bare = bare.quantize(256, Image.Quantize.FASTOCTREE)  # a hundredth of the time
    with io.BytesIO() as file:
        bare.save(file, kind, quality=quality, optimize=True)
        return file.getvalue()
