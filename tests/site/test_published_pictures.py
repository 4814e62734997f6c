"""Pictures in the site: photos small and bare, drawings as they are, nothing damaged."""

from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest
from PIL import Image

from builder.cache.database import temporary
from builder.check.unchecked_library import read_library
from builder.model.finding import Severity
from builder.pictures import photos
from builder.reader.trees import tree_of
from builder.site.build_site import SiteInput, build_site

from .conftest import build_shop
from .test_build_site import contents

PLACE = "how-to/pictures"


@pytest.fixture
def pictures(shop: Path) -> Path:
    """Put a drawing and a phone's photo into the shop."""
    folder = shop / "kb" / PLACE
    folder.mkdir(exist_ok=True)
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

    monkeypatch.setattr("builder.site.published_pictures.published", counted)
    for _ in range(2):
        build_shop(shop, shop.parent / "site")
    assert made == ["plug.jpg"]
    Image.new("RGB", (40, 30)).save(pictures / "plug.jpg")
    build_shop(shop, shop.parent / "site")
    assert made == ["plug.jpg"] * 2
    with Image.open(shop.parent / "site" / PLACE / "plug.jpg") as image:
        assert image.size == (40, 30)


def test_a_damaged_photo_is_found_by_the_check(shop: Path, pictures: Path) -> None:
    """A photo that is cut off is a finding before anything is built."""
    whole = (pictures / "plug.jpg").read_bytes()
    (pictures / "plug.jpg").write_bytes(whole[: len(whole) // 2])
    _, findings = read_library(shop)
    assert [(one.rule, one.severity) for one in findings] == [("unsafe-picture", Severity.ERROR)]
    assert findings[0].at.file == f"kb/{PLACE}/plug.jpg"


def test_a_photo_damaged_meanwhile_leaves_the_old_site(shop: Path, pictures: Path) -> None:
    """A photo that turns out to be damaged when it is made small is named, and nothing changes."""
    build_shop(shop, shop.parent / "site")
    before = contents(shop.parent / "site")
    (pictures / "plug.jpg").write_bytes((pictures / "plug.jpg").read_bytes()[:9_000])
    library, _ = read_library(shop)
    library = replace(library, pictures={"plug.svg": 1, "plug.jpg": 1})
    with temporary() as cache:
        given = SiteInput(shop, cache, library, partial(tree_of, shop, library), prints=False)
        with pytest.raises(OSError, match=r"plug\.jpg"):
            build_site(given, shop.parent / "site")
    assert contents(shop.parent / "site") == before
