"""Links in Markdown lead to a page under its new name, and nothing else in the text is touched."""

import shutil
from pathlib import Path

import pytest

from builder.authoring.not_written import NotWritten
from builder.authoring.rename import rename_article, rename_step, rename_tree
from builder.check.unchecked_library import read_library

SAMPLES = Path(__file__).parents[1] / "samples"
ARTICLE = "kb/how-to/voltage-drop.md"
LINKS = """\r
See [the light](../trees/charging/lamp-on.md), [its belt](../trees/charging/lamp-on.md#step-belt),\r
[another](../trees/charging/lamp-on-2.md), [its file](../../trees/charging/lamp-on.yml),\r
[![a picture](pictures/charging-drop.svg)](<../trees/charging/lamp-on.html> "battery light"),\r
`[code](../trees/charging/lamp-on.md)`, charging/lamp-on, <https://x.example/lamp-on.md>,\r
[the load test](battery-load-test.md#part-1) and [more][more].\r
\r
[more]: ../trees/charging/lamp-on.md#step-belt\r
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """Copy the samples, with links in an article and in two files beside the shop's own."""
    shop = Path(shutil.copytree(SAMPLES, tmp_path / "shop"))
    with (shop / ARTICLE).open("a", encoding="utf-8", newline="") as file:
        file.write(LINKS)
    link = "[x]({})\n"
    (shop / "README.md").write_text(link.format("trees/charging/lamp-on.yml#L3"), "utf-8")
    (shop / "trees/charging/notes.md").write_text(link.format("lamp-on.yml"), "utf-8")
    (shop / "docs").mkdir()
    (shop / "docs/list.md").write_text(link.format("../kb/how-to/battery-load-test.md"), "utf-8")
    return shop


def links_of(shop: Path) -> str:
    """Return what was added to the article."""
    text = (shop / ARTICLE).read_bytes().decode()
    return text[text.rindex("\r\nSee ") :]


def test_links_follow_a_tree(shop: Path) -> None:
    """In articles as the site has it, elsewhere as the folders are; code and other names stay."""
    written = rename_tree(shop, "charging/lamp-on", "battery/light-on")
    assert not isinstance(written, NotWritten)
    names = {path.relative_to(shop).as_posix() for path in written}
    assert {ARTICLE, "README.md", "trees/charging/notes.md"} <= names
    expected = LINKS.replace("../trees/charging/lamp-on.", "../trees/battery/light-on.")
    expected = expected.replace("../../trees/charging/lamp-on.", "../../trees/battery/light-on.")
    code = "`[code](../trees/{}.md)`"
    expected = expected.replace(code.format("battery/light-on"), code.format("charging/lamp-on"))
    assert links_of(shop) == expected
    assert (shop / "README.md").read_text("utf-8") == "[x](trees/battery/light-on.yml#L3)\n"
    assert (shop / "trees/charging/notes.md").read_text("utf-8") == "[x](../battery/light-on.yml)\n"


def test_links_follow_a_step(shop: Path) -> None:
    """Only where a link names the step of that tree."""
    assert not isinstance(rename_step(shop, "charging/lamp-on", "belt", "drive-belt"), NotWritten)
    assert links_of(shop) == LINKS.replace("#step-belt", "#step-drive-belt")


def test_an_article_is_renamed_in_steps_and_links(shop: Path) -> None:
    """Its file moves; no step and no link leads to the old name."""
    before = read_library(shop)[1]
    written = rename_article(shop, "battery-load-test", "load-test")
    assert not isinstance(written, NotWritten)
    assert links_of(shop) == LINKS.replace("battery-load-test.md", "load-test.md")
    assert (shop / "docs/list.md").read_text("utf-8") == "[x](../kb/how-to/load-test.md)\n"
    library, after = read_library(shop)
    assert len(after) == len(before)
    assert "load-test" in library.how_tos
    procedures = (shop / "kb/procedures").glob("*.yml")
    assert not any("battery-load-test" in path.read_text("utf-8") for path in procedures)


@pytest.mark.parametrize(("old", "new"), [
    ("no-such", "other"), ("voltage-drop", "A b"), ("voltage-drop", "battery-load-test"),
    ("voltage-drop", "../out"), ("../procedures/x", "y"),
])  # fmt: skip
def test_a_name_that_cannot_be_is_refused(shop: Path, old: str, new: str) -> None:
    """Nothing is written or moved."""
    before = {path: path.read_bytes() for path in shop.rglob("*") if path.is_file()}
    assert isinstance(rename_article(shop, old, new), NotWritten)
    assert {path: path.read_bytes() for path in shop.rglob("*") if path.is_file()} == before
