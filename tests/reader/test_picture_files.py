"""The pictures of articles: anything but a plain picture is reported and never published."""

import io
from pathlib import Path

import pytest
from PIL import Image

from builder.pictures.photos import MAX_PUBLISHED_BYTES
from builder.reader.picture_files import pictures
from builder.reader.source import MAX_FILE_BYTES

DRAWING = b'<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9"/></svg>'
PLACE = "kb/how-to/pictures"


def photo() -> bytes:
    """Return a small photo as a camera would write it."""
    with io.BytesIO() as file:
        Image.new("RGB", (8, 6), "red").save(file, "JPEG")
        return file.getvalue()


def put(shop: Path, name: str, content: bytes) -> Path:
    """Write a file among the pictures."""
    path = shop / PLACE / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content)
    return path


def test_a_drawing_and_a_photo_are_known_by_their_sizes(tmp_path: Path) -> None:
    """What a reader has to fetch is known to the rule that asks for small pictures."""
    put(tmp_path, "plug.svg", DRAWING)
    put(tmp_path, "plug.JPG", photo())
    put(tmp_path, "large.jpg", photo() + bytes(MAX_PUBLISHED_BYTES))
    put(tmp_path, ".gitkeep", b"")
    assert pictures(tmp_path) == (
        {"plug.svg": len(DRAWING), "plug.JPG": len(photo()), "large.jpg": MAX_PUBLISHED_BYTES},
        [],
    )


REFUSED = {
    "page.html": b"<p>",
    "script.svg": DRAWING.replace(b"<path", b"<script/><path"),
    "text.jpg": b"no photo",
    "phone.heic": b"",
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_is_no_picture_is_reported_and_left_out(tmp_path: Path, name: str) -> None:
    """The finding names the file, and it isn't published."""
    put(tmp_path, name, REFUSED[name])
    sizes, findings = pictures(tmp_path)
    assert sizes == {}
    assert [finding.rule for finding in findings] == ["unsafe-picture"]
    assert findings[0].at.file == f"{PLACE}/{name}"
    assert findings[0].hint


@pytest.mark.parametrize("name", ["large.svg", "large.png"])
def test_a_picture_of_too_many_bytes_is_reported_unread(tmp_path: Path, name: str) -> None:
    """A file of 33 MB is reported without reading it, and so is a drawing over 1 MB."""
    with put(tmp_path, name, b"").open("wb") as file:
        file.truncate(MAX_FILE_BYTES + 1 if name.endswith("svg") else 33 * MAX_FILE_BYTES)
    assert [finding.rule for finding in pictures(tmp_path)[1]] == ["size"]


@pytest.mark.parametrize("target", ["cases/2026-0188.yml", "how-to/brakes.md", "../trees/a/b.yml"])
def test_a_link_out_of_the_pictures_is_never_published(tmp_path: Path, target: str) -> None:
    """A closed job under a picture's name would be published with its mileage and its dates."""
    put(tmp_path, "plain.svg", DRAWING)
    private = tmp_path / "kb" / target
    private.parent.mkdir(parents=True, exist_ok=True)
    private.write_text("vehicle: {km: 171400}")
    (tmp_path / "kb/how-to/pictures/drawing.png").symlink_to(private)
    (tmp_path / "kb/how-to/pictures/same.svg").symlink_to("plain.svg")
    sizes, findings = pictures(tmp_path)
    assert set(sizes) == {"plain.svg", "same.svg"}
    assert [(one.rule, one.at.file) for one in findings] == [
        ("link", "kb/how-to/pictures/drawing.png")
    ]


def test_a_linked_folder_of_pictures_is_never_published(tmp_path: Path) -> None:
    """Nothing is published when the folder itself leads to another one."""
    (tmp_path / "kb/cases").mkdir(parents=True)
    (tmp_path / "kb/cases/plan.png").write_text("private")
    (tmp_path / "kb/how-to").mkdir()
    (tmp_path / "kb/how-to/pictures").symlink_to(tmp_path / "kb/cases")
    sizes, findings = pictures(tmp_path)
    assert sizes == {}
    assert [one.rule for one in findings] == ["link"]


def test_a_link_is_no_picture_of_the_shop(tmp_path: Path) -> None:
    """What a link leads to outside is never published."""
    shop = tmp_path / "shop"
    put(shop, "plain.svg", DRAWING)
    (tmp_path / "secret.png").write_text("secret")
    (shop / PLACE / "out.png").symlink_to(tmp_path / "secret.png")
    sizes, findings = pictures(shop)
    assert set(sizes) == {"plain.svg"}
    assert [finding.rule for finding in findings] == ["link"]
