"""A phone's photo can be used unedited, and is published small, upright and without its notes.

Orientation, time and place are tags of Exif 2.32 (CIPA DC-008): 0x0112, 0x0132, 0x8825.
"""

import io
import random
import zlib
from pathlib import Path

import pytest
from PIL import Image

from builder.pictures.photos import (
    MAX_PIXELS,
    MAX_PUBLISHED_BYTES,
    PHOTO_FORMATS,
    photo_problem,
    published_photo,
)
from builder.pictures.problem import PictureProblem


def taken(tmp_path: Path, name: str, size: tuple[int, int] = (2400, 1800)) -> Path:
    """Write a photo as a phone held upright takes it: the left half is red, turned by a tag."""
    exif = Image.Exif()
    exif[0x0112], exif[0x010F], exif[0x0132] = 6, "A camera", "2026:03:02 10:00:00"
    exif[0x8825] = {1: "N", 2: (50.0, 30.0, 0.0)}
    image = Image.new("RGB", size, "blue")
    image.paste("red", (0, 0, size[0] // 2, size[1]))
    kind = PHOTO_FORMATS[Path(name).suffix.lower()]
    notes = {} if kind == "GIF" else {"exif": exif.tobytes()}
    image.save(tmp_path / name, kind, **notes)
    return tmp_path / name


def small(path: Path) -> Image.Image:
    """Open what is published for a photo."""
    content = published_photo(path)
    assert isinstance(content, bytes)
    return Image.open(io.BytesIO(content))


@pytest.mark.parametrize("name", ["a.jpg", "a.JPEG", "a.png", "a.webp", "a.avif", "a.gif"])
def test_a_photo_is_published_small_and_bare(tmp_path: Path, name: str) -> None:
    """1600 pixels on the long side, the same kind of file, and nothing of place or camera."""
    path = taken(tmp_path, name)
    assert photo_problem(path) is None
    with small(path) as image:
        assert max(image.size) == 1600
        assert image.format == PHOTO_FORMATS[path.suffix.lower()]
        assert dict(image.getexif()) == {}
    content = published_photo(path)
    assert isinstance(content, bytes)
    assert len(content) <= MAX_PUBLISHED_BYTES
    for note in (b"A camera", b"2026:03:02", b"Exif"):
        assert note not in content


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp"])
def test_a_photo_stands_upright(tmp_path: Path, name: str) -> None:
    """Turned by a quarter, the red left half of what the camera saw is on top."""
    with small(taken(tmp_path, name)) as image:
        assert image.size == (1200, 1600)
        upper, lower = (image.convert("RGB").getpixel((600, y)) for y in (300, 1300))
        assert isinstance(upper, tuple)
        assert isinstance(lower, tuple)
        assert upper[0] > 200 > 100 > upper[2]
        assert lower[2] > 200 > 100 > lower[0]


def test_a_small_photo_is_not_blown_up(tmp_path: Path) -> None:
    """It keeps its pixels."""
    with small(taken(tmp_path, "a.jpg", (320, 200))) as image:
        assert image.size == (200, 320)


@pytest.mark.parametrize("name", ["noise.jpg", "noise.png"])
def test_a_photo_of_noise_is_small_as_well(tmp_path: Path, name: str) -> None:
    """Whatever is on it, a phone in the bay gets it within two seconds."""
    pixels = random.Random(1).randbytes(2000 * 1500 * 3)
    Image.frombytes("RGB", (2000, 1500), pixels).save(tmp_path / name, quality=100)
    content = published_photo(tmp_path / name)
    assert isinstance(content, bytes)
    assert len(content) <= MAX_PUBLISHED_BYTES


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGBA", "I;16"])
def test_a_picture_with_any_colors_is_published(tmp_path: Path, mode: str) -> None:
    """Screens and scanners write gray, palettes and clear parts."""
    Image.new(mode, (1700, 40)).save(tmp_path / "a.png")
    with small(tmp_path / "a.png") as image:
        assert image.size == (1600, 38)


def test_the_same_photo_gives_the_same_bytes(tmp_path: Path) -> None:
    """A site built twice is the same site."""
    path = taken(tmp_path, "a.jpg")
    assert published_photo(path) == published_photo(path)


def bomb(tmp_path: Path, width: int, height: int) -> Path:
    """Write a few bytes that claim to be a large picture."""
    size = width.to_bytes(4, "big") + height.to_bytes(4, "big")
    parts = (b"IHDR" + size + b"\x08\x02\0\0\0", b"IDAT" + zlib.compress(b""), b"IEND")
    chunks = (
        (len(part) - 4).to_bytes(4, "big") + part + zlib.crc32(part).to_bytes(4, "big")
        for part in parts
    )
    (tmp_path / "bomb.png").write_bytes(b"\x89PNG\r\n\x1a\n" + b"".join(chunks))
    return tmp_path / "bomb.png"


@pytest.mark.parametrize("width", [MAX_PIXELS // 1000 + 1, 10_000_000])
def test_a_bomb_is_reported_and_never_unpacked(tmp_path: Path, width: int) -> None:
    """A hundred bytes may claim to be a picture of gigabytes."""
    for found in (
        photo_problem(bomb(tmp_path, width, 1000)),
        published_photo(bomb(tmp_path, width, 1000)),
    ):
        assert isinstance(found, PictureProblem)
        assert "million pixels" in found.message


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp", "a.avif", "a.gif"])
def test_a_photo_that_is_cut_off_is_reported_before_it_is_published(
    tmp_path: Path, name: str
) -> None:
    """Cut anywhere, as by a card pulled out while copying: the check reports it, not the build."""
    path = taken(tmp_path, name, (400, 300))
    whole = path.read_bytes()
    for percent in (5, 25, 50, 75, 95):
        path.write_bytes(whole[: len(whole) * percent // 100])
        assert isinstance(photo_problem(path), PictureProblem)
        assert isinstance(published_photo(path), PictureProblem)


@pytest.mark.parametrize("name", ["a.jpg", "a.png", "a.webp", "a.avif", "a.gif"])
def test_a_file_that_is_no_photo_is_reported(tmp_path: Path, name: str) -> None:
    """Empty, only a head, or something else by another name: reported, and never published."""
    path = taken(tmp_path, name)
    for content in (b"", b"<svg/>", path.read_bytes()[:20]):
        path.write_bytes(content)
        assert isinstance(photo_problem(path), PictureProblem)
        assert isinstance(published_photo(path), PictureProblem)


def test_no_damage_to_a_photo_ends_in_an_error(tmp_path: Path) -> None:
    """Zeros in the pixels, as from a bad card: reported, or published as it can be read."""
    pixels = random.Random(1).randbytes(80 * 60 * 3)
    for suffix, kind in PHOTO_FORMATS.items():
        path = tmp_path / f"a{suffix}"
        Image.frombytes("RGB", (80, 60), pixels).save(path, kind)
        whole = path.read_bytes()
        for start in range(0, len(whole), max(1, len(whole) // 25)):
            path.write_bytes(whole[:start] + bytes(40) + whole[start + 40 :])
            for outcome in (photo_problem(path), published_photo(path)):
                assert outcome is None or isinstance(outcome, bytes | PictureProblem)


def test_another_kind_by_a_photo_s_name_is_not_opened(tmp_path: Path) -> None:
    """Only the decoder that the name asks for is reached, and none of the rare ones."""
    Image.new("RGB", (9, 9)).save(tmp_path / "a.tiff")
    (tmp_path / "a.tiff").rename(tmp_path / "a.jpg")
    assert isinstance(photo_problem(tmp_path / "a.jpg"), PictureProblem)
