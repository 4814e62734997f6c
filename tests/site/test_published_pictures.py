"""Pictures in the site: photos scaled down without metadata, drawings as they are."""

from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest
from PIL import Image

from builder.cache.database import temporary
from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.finding import Severity
from builder.pictures import photos
from builder.site.build_site import SiteInput, build_site

from .conftest import build_shop
from .test_build_site import contents

PLACE = "how-to/pictures"


@pytest.fixture
def pictures(shop: Path) -> Path:
    """Put a drawing and a photo from a phone into the shop."""
    folder = shop / "kb" / PLACE
    folder.mkdir(exist_ok=True)
    (folder / "plug.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg"/>')
    exif = Image.Exif()
    exif[0x010F] = "A camera"
    Image.new("RGB", (2400, 1800), "red").save(folder / "plug.jpg", exif=exif.tobytes())
    return folder


def test_a_photo_is_scaled_down(shop: Path, pictures: Path) -> None:
    """The site gets a smaller photo without metadata."""
    build_shop(shop, shop.parent / "site")
    site = shop.parent / "site" / PLACE
    assert (site / "plug.svg").read_bytes() == (pictures / "plug.svg").read_bytes()
    with Image.open(site / "plug.jpg") as image:
        assert image.size == (1600, 1200)
    assert b"A camera" not in (site / "plug.jpg").read_bytes()


def test_a_photo_is_scaled_down_once(
    shop: Path, pictures: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The cache keeps it until another photo has its name."""
    scaled: list[str] = []
    small = photos.published_photo

    def counted(path: Path) -> object:
        scaled.append(path.name)
        return small(path)

    monkeypatch.setattr("builder.site.published_pictures.published_photo", counted)
    for _ in range(2):
        build_shop(shop, shop.parent / "site")
    assert scaled == ["plug.jpg"]
    Image.new("RGB", (40, 30)).save(pictures / "plug.jpg")
    build_shop(shop, shop.parent / "site")
    assert scaled == ["plug.jpg"] * 2
    with Image.open(shop.parent / "site" / PLACE / "plug.jpg") as image:
        assert image.size == (40, 30)


def test_a_damaged_photo_is_found_by_the_check(shop: Path, pictures: Path) -> None:
    """A truncated photo is a finding before anything is built."""
    whole = (pictures / "plug.jpg").read_bytes()
    (pictures / "plug.jpg").write_bytes(whole[: len(whole) // 2])
    _, findings = read_library(shop)
    assert [(one.rule, one.severity) for one in findings] == [("unsafe-picture", Severity.ERROR)]
    assert findings[0].at.file == f"kb/{PLACE}/plug.jpg"


def test_a_photo_damaged_after_the_check_leaves_the_old_site(shop: Path, pictures: Path) -> None:
    """The error names the photo, and the old site stays."""
    build_shop(shop, shop.parent / "site")
    before = contents(shop.parent / "site")
    (pictures / "plug.jpg").write_bytes((pictures / "plug.jpg").read_bytes()[:9_000])
    library, _ = read_library(shop)
    library = replace(library, pictures={"plug.svg": 1, "plug.jpg": 1})
    with temporary() as cache:
        site = SiteInput(shop, cache, library, partial(tree_of, shop, library), prints=False)
        with pytest.raises(OSError, match=r"plug\.jpg"):
            build_site(site, shop.parent / "site")
    assert contents(shop.parent / "site") == before
