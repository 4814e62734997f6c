"""Pictures in the site: photos small and bare, drawings as they are, nothing damaged."""

from pathlib import Path

import pytest
from PIL import Image

from builder.model.finding import Severity
from builder.pictures import photos

from .conftest import build_shop

PLACE = "how-to/pictures"


@pytest.fixture
def pictures(shop: Path) -> Path:
    """Put a drawing and a phone's photo into the shop."""
    folder = shop / "kb" / PLACE
    folder.mkdir()
    (folder / "plug.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"/>')
    exif = Image.Exif()
    exif[0x010F] = "A camera"
    Image.new("RGB", (2400, 1800), "red").save(folder / "plug.jpg", exif=exif.tobytes())
    return folder


def test_a_photo_is_published_small(shop: Path, pictures: Path) -> None:
    """What a phone took is made small and bare on its way to the site."""
    build_shop(shop, shop.parent / "site")
    site = shop.parent / "site" / PLACE
    assert (site / "plug.svg").read_bytes() == (pictures / "plug.svg").read_bytes()
    with Image.open(site / "plug.jpg") as image:
        assert image.size == (1600, 1200)
    assert b"A camera" not in (site / "plug.jpg").read_bytes()


def test_a_photo_is_made_small_once(
    shop: Path, pictures: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The next build takes it from the last, until another photo has its name."""
    made: list[str] = []
    small = photos.published

    def counted(path: Path) -> object:
        made.append(path.name)
        return small(path)

    monkeypatch.setattr("builder.site.pictures.published", counted)
    for _ in range(2):
        build_shop(shop, shop.parent / "site")
    assert made == ["plug.jpg"]
    Image.new("RGB", (40, 30)).save(pictures / "plug.jpg")
    build_shop(shop, shop.parent / "site")
    assert made == ["plug.jpg"] * 2
    with Image.open(shop.parent / "site" / PLACE / "plug.jpg") as image:
        assert image.size == (40, 30)


def test_a_damaged_photo_stops_the_build(shop: Path, pictures: Path) -> None:
    """A photo that turns out to be cut off is a finding, and the old site stays."""
    whole = (pictures / "plug.jpg").read_bytes()
    (pictures / "plug.jpg").write_bytes(whole[: len(whole) // 2])
    built = build_shop(shop, shop.parent / "site")
    assert [(one.rule, one.severity) for one in built.findings] == [
        ("unsafe-picture", Severity.ERROR)
    ]
    assert built.findings[0].at.file == f"kb/{PLACE}/plug.jpg"
    assert not (shop.parent / "site").exists()


def test_an_author_at_work_sees_the_rest_of_the_site(shop: Path, pictures: Path) -> None:
    """While an author is at work, a damaged photo is missing and all else is there."""
    (pictures / "plug.jpg").write_bytes((pictures / "plug.jpg").read_bytes()[:20_000])
    build_shop(shop, shop.parent / "site", findings=())
    names = {file.name for file in (shop.parent / "site" / PLACE).iterdir()}
    assert names == {"plug.svg"}
