"""The book of a system: contents that lead to its trees, and every sheet of each."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from builder.model.library import Library
from builder.model.tree import Tree
from builder.prints.book import book
from builder.prints.paper import PAPERS
from builder.prints.wall_layout import wall_layout


@pytest.fixture(scope="module")
def charging(trees: tuple[Tree, ...]) -> list[Tree]:
    """Return the trees of one system."""
    return [tree for tree in trees if tree.system == "charging"]


@pytest.fixture(scope="module")
def reader(charging: list[Tree], library: Library) -> PdfReader:
    """Print their book and open it."""
    walls = [wall_layout(tree, library, PAPERS["a3"]) for tree in charging]
    return PdfReader(BytesIO(book(walls, "charging", library, "a3")), strict=True)


def test_the_contents_give_the_page_of_each_tree(
    reader: PdfReader, charging: list[Tree], library: Library
) -> None:
    """The page that the contents name is the first sheet of the tree."""
    contents = reader.pages[0].extract_text().splitlines()
    page = 2
    for tree in sorted(charging, key=lambda tree: str(tree.title).casefold()):
        at = contents.index(str(tree.title))
        assert contents[at + 1].strip() == str(page)
        assert str(tree.title) in reader.pages[page - 1].extract_text()
        page += len(wall_layout(tree, library, PAPERS["a3"]).charts)
    assert len(reader.pages) == page - 1


def test_the_outline_lists_the_trees(reader: PdfReader, charging: list[Tree]) -> None:
    """A reader's side bar leads to every tree."""
    titles = [entry.title for entry in reader.outline]
    assert titles == ["Contents", *sorted(str(tree.title) for tree in charging)]


def test_the_lines_of_the_contents_are_links(reader: PdfReader, charging: list[Tree]) -> None:
    """A touch on a line turns to its tree."""
    links = [link.get_object() for link in reader.pages[0]["/Annots"]]
    assert len([link for link in links if "/Dest" in link]) == len(charging)


def test_many_trees_take_more_pages_of_contents(small: Tree, library: Library) -> None:
    """The contents go on where one page is full, and their figures still hold."""
    wall = wall_layout(small, library, PAPERS["letter"])
    reader = PdfReader(BytesIO(book([wall] * 40, "charging", library, "letter")))
    contents = len(reader.pages) - 40 * len(wall.charts)
    assert contents == 2
    assert str(contents + 1) in reader.pages[0].extract_text().split()
