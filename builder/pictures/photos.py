"""Photos, such as from a phone: checked, and made small and plain for publishing.

In: a photo's file. Out: why it can't be used, or the bytes of the same kind of file: upright, up to
1600 pixels on the long side and 300 KiB, without metadata such as place and owner.
"""

import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError

from builder.pictures.problem import PictureProblem

PHOTO_FORMATS = {
    ".jpg": "JPEG",
    ".jpeg": "JPEG",
    ".png": "PNG",
    ".webp": "WEBP",
    ".avif": "AVIF",
    ".gif": "GIF",
}
MAX_PHOTO_BYTES = 32 * 1024 * 1024  # a phone's best photo has about 20 MiB
MAX_PIXELS = 64_000_000  # phones reach 50 million; unpacked this is up to 256 MB
MAX_PUBLISHED_BYTES = 300 * 1024  # 1.5 s at the 1.6 Mbit/s of a phone behind a wall
# Pixels on the long side and quality; each in turn until the photo is small enough.
TRIES = ((1600, 82), (1600, 65), (1200, 65), (800, 60), (500, 50))
JPEG_PIXELS, JPEG_END = b"\xff\xda", b"\xff\xd9"  # markers of ITU-T T.81
UNPACKED = ("GIF", "AVIF")  # the others show a cut by an end marker or the length of their parts
AGAIN = "take it again, or save it again in a photo editor"
# What decoders raise; that of AVIF raises RuntimeError.
OPENING = (
    OSError, SyntaxError, ValueError, EOFError, RuntimeError, MemoryError,
    Image.DecompressionBombError,
)  # fmt: skip


def photo_problem(path: Path) -> PictureProblem | None:
    """Return why a photo can't be used; pixels are unpacked only where nothing else shows a cut."""
    try:
        with _opened(path) as image:
            if problem := _too_large(image):
                return problem
            if image.format in UNPACKED:
                image.load()
            image.verify()
        cut_off = image.format == "JPEG" and not _ends(path.read_bytes())
    except OPENING as error:
        return _unreadable(path, error)
    return _damaged(path) if cut_off else None


def _ends(jpeg: bytes) -> bool:
    """Whether the end marker follows the pixels; a thumbnail in the head has one too."""
    return JPEG_END in jpeg[max(jpeg.rfind(JPEG_PIXELS), 0) :]


def _damaged(path: Path) -> PictureProblem:
    kind = PHOTO_FORMATS[path.suffix.lower()]
    return PictureProblem(f"this {kind} file is damaged or cut off", AGAIN)


def published_photo(path: Path) -> bytes | PictureProblem:
    """Return the bytes to publish, or why the photo can't be published."""
    try:
        with _opened(path) as image:
            return _too_large(image) or _small(image, PHOTO_FORMATS[path.suffix.lower()])
    except OPENING as error:
        return _unreadable(path, error)


@contextmanager
def _opened(path: Path) -> Iterator[Image.Image]:
    """Open a photo only as the format in its name, so that no other decoder runs."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # about metadata, and about size, which is limited here
        with Image.open(path, formats=[PHOTO_FORMATS[path.suffix.lower()]]) as image:
            yield image


def _too_large(image: Image.Image) -> PictureProblem | None:
    width, height = image.size
    return _more_than_most() if width * height > MAX_PIXELS else None


def _more_than_most() -> PictureProblem:
    return PictureProblem(f"this photo has more than {MAX_PIXELS // 1_000_000} million pixels",
                 "make it smaller; pages show 1600 pixels on the long side")  # fmt: skip


def _unreadable(path: Path, error: BaseException) -> PictureProblem:
    kind = PHOTO_FORMATS[path.suffix.lower()]
    if isinstance(error, Image.DecompressionBombError):
        return _more_than_most()
    if isinstance(error, UnidentifiedImageError):
        return PictureProblem(f"this isn't a {kind} file, as its name says", AGAIN)
    return _damaged(path)


def _small(image: Image.Image, kind: str) -> bytes:
    """Write the pixels again, and nothing else, at the first size that is small enough."""
    if image.mode in ("P", "1"):
        image = image.convert("RGBA")  # a palette can't be resized smoothly
    image.thumbnail((TRIES[0][0],) * 2)
    plain = ImageOps.exif_transpose(image)
    plain = plain.convert("RGBA" if _has_clear_parts(plain) and kind != "JPEG" else "RGB")
    content = b""
    for side, quality in TRIES:
        plain.thumbnail((side, side))
        content = _encoded(plain, kind, quality)
        if len(content) <= MAX_PUBLISHED_BYTES:
            break
    return content


def _has_clear_parts(image: Image.Image) -> bool:
    return "A" in image.mode or "transparency" in image.info


def _encoded(image: Image.Image, kind: str, quality: int) -> bytes:
    bare = Image.new(image.mode, image.size)
    bare.paste(image)  # drops the metadata that a decoder keeps with the pixels
    if kind in ("PNG", "GIF") and (kind == "GIF" or quality < TRIES[0][1]):
        bare = bare.quantize(256, Image.Quantize.FASTOCTREE)  # 1/100 of the time
    with io.BytesIO() as file:
        bare.save(file, kind, quality=quality, optimize=True)
        return file.getvalue()
