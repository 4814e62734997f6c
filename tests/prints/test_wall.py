"""The wall chart as a file: what readers, printers and scanners make of it."""

import os
import re
import subprocess
import sys
from dataclasses import replace
from io import BytesIO
from itertools import islice
from pathlib import Path

import pdfplumber
import pytest
import zxingcpp
from pdfplumber.page import Page
from PIL import Image
from pypdf import PdfReader

import builder
from builder.chart.chart import Box, Rect
from builder.model.library import Library
from builder.model.text import NOWHERE, Text
from builder.model.tree import Scope, Tree
from builder.plan.numbering import numbering
from builder.prints.head import head_of
from builder.prints.paper import MARGIN, PAPERS, reads_from
from builder.prints.sheet import LEAST_SIZE, page_address
from builder.prints.wall import wall_chart
from builder.prints.wall_distance import MOST_SHEETS, TooFarError
from builder.prints.wall_layout import Wall, wall_layout
from builder.wording.sentences import capitalized

HERE = Path(__file__).parent


@pytest.fixture(scope="module")
def lamp(trees: tuple[Tree, ...]) -> Tree:
    """Return the tree of the charging lamp."""
    (found,) = (tree for tree in trees if tree.id == "charging/battery-lamp")
    return found


@pytest.fixture(scope="module")
def pdf(lamp: Tree, library: Library) -> bytes:
    """Print it on A4."""
    return wall_chart(lamp, library, "a4")


def read(pdf: bytes) -> PdfReader:
    """Open a PDF; a warning of the reader fails the test."""
    return PdfReader(BytesIO(pdf), strict=True)


def poppler(tool: str, pdf: bytes, *arguments: str) -> str:
    """Run a tool of poppler on a PDF; it must have nothing to complain of."""
    run = subprocess.run([tool, *arguments, "-", "-"] if tool == "pdftotext" else [tool, "-"],
                         input=pdf, capture_output=True, check=True)  # fmt: skip
    assert not run.stderr
    return run.stdout.decode()


def test_the_faces_are_embedded_and_subset(pdf: bytes) -> None:
    """It looks the same on every printer: poppler finds no face that is not in the file."""
    rows = [row.split() for row in poppler("pdffonts", pdf).splitlines()[2:]]
    assert rows
    for row in rows:
        assert re.match(r"[A-Z]{6}\+BaytreeSans-(Medium|Bold)$", row[0])
        embedded, subset = row[-5], row[-4]
        assert (embedded, subset) == ("yes", "yes")


def test_title_language_and_outline_are_set(pdf: bytes, lamp: Tree) -> None:
    """A screen reader says what it is and in which language."""
    reader = read(pdf)
    assert reader.metadata is not None
    assert reader.metadata.title == lamp.title
    assert reader.trailer["/Root"]["/Lang"] == "en-US"
    assert [entry.title for entry in reader.outline] == [lamp.title]


def test_words_can_be_selected(pdf: bytes, lamp: Tree) -> None:
    """Every step can be searched for in the file."""
    text = " ".join(poppler("pdftotext", pdf, "-layout").split())
    shown = "".join(text.split())
    for step in lamp.steps.values():
        for word in str(step.text).split():
            assert word in shown, step.id


def test_the_same_tree_gives_the_same_bytes(pdf: bytes) -> None:
    """Another run, with other hashing, on another day, gives the same file."""
    script = (
        "import sys; from shop import *; from builder.prints.wall import wall_chart;"
        "tree = next(t for t in shop_trees() if t.id == 'charging/battery-lamp');"
        "sys.stdout.buffer.write(wall_chart(tree, shop_library(), 'a4'))"
    )
    paths = [str(Path(builder.__file__).parents[1]), str(HERE.parent / "chart")]
    run = subprocess.run(
        [sys.executable, "-c", script],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(paths), "PYTHONHASHSEED": "7"},
        capture_output=True,
        check=True,
    )
    assert run.stdout == pdf


def test_the_square_code_opens_the_page(pdf: bytes, lamp: Tree, library: Library) -> None:
    """Rendered at the density of a phone's picture, every sheet's code is read (zxing-cpp)."""
    address = page_address(lamp, library)
    assert lamp.revision in address
    for number in range(1, len(read(pdf).pages) + 1):
        drawn = subprocess.run(
            ["pdftoppm", "-r", "120", "-png", "-f", str(number), "-l", str(number), "-"],
            input=pdf, capture_output=True, check=True,
        ).stdout  # fmt: skip
        found = zxingcpp.read_barcodes(Image.open(BytesIO(drawn)))
        assert [code.text for code in found] == [address]


def test_links_lead_to_the_page_and_to_other_sheets(
    pdf: bytes, lamp: Tree, library: Library
) -> None:
    """A step opens its place on the page; a connector turns to the step it names."""
    reader = read(pdf)
    addresses, places = set(), set()
    for page in reader.pages:
        for link in page.get("/Annots", []):
            link = link.get_object()
            if "/A" in link:
                addresses.add(link["/A"]["/URI"])
            else:
                places.add(link["/Dest"][0].idnum)
    root = page_address(lamp, library)
    assert {f"{root}#step-{step}" for step in lamp.steps} <= addresses
    assert any("/trees/charging/voltage-high.html" in address for address in addresses)
    assert places
    assert places <= {page.indirect_reference.idnum for page in reader.pages}


def places_of(wall: Wall, number: int) -> list[tuple[Box, Rect]]:
    """Return each box of a sheet and its place on the page, from the top left."""
    chart = wall.charts[number - 1]
    top = MARGIN + (wall.chart_top if number == 1 else 0)
    s = chart.scale
    return [
        (box, Rect(MARGIN + box.rect.x * s, top + box.rect.y * s,
                   box.rect.width * s, box.rect.height * s))
        for box in chart.boxes
    ]  # fmt: skip


def test_every_string_stands_in_its_box(trees: tuple[Tree, ...], library: Library) -> None:
    """In the PDF of every tree of the shop, the words of a box are found inside it, all of them."""
    for tree in trees:
        wall = wall_layout(tree, library, PAPERS["a3"])
        with pdfplumber.open(BytesIO(wall_chart(tree, library, "a3"))) as document:
            for number, page in enumerate(document.pages, start=1):
                chars = [char for char in page.chars if char["text"].strip()]
                for box, place in places_of(wall, number):
                    wanted = sorted("".join(run.text for run in box.runs if run.text.strip()))
                    inside = sorted(char["text"] for char in chars if stands_in(char, place))
                    assert [c for c in wanted if c.strip()] == inside, (tree.id, box.id)


def stands_in(char: dict[str, float], place: Rect) -> bool:
    """Whether a letter stands in a place, to a quarter of a point."""
    middle = (char["top"] + char["bottom"]) / 2
    if not (place.x < char["x0"] and char["x1"] < place.right):
        return False
    return place.y - 0.25 < middle < place.bottom + 0.25


def test_no_text_on_a_sheet_is_smaller_than_the_foot_says(pdf: bytes) -> None:
    """The chart is read from as far as its foot says; nothing at all is below ten points."""
    with pdfplumber.open(BytesIO(pdf)) as document:
        for page in document.pages:
            sizes = {round(char["size"], 2) for char in page.chars}
            assert min(sizes) >= LEAST_SIZE
            said = re.search(r"Steps read from ([\d.]+) m", page.extract_text())
            assert said
            smallest = min((size for size in sizes if size > LEAST_SIZE + 0.01), default=LEAST_SIZE)
            assert float(said[1]) <= reads_from(smallest)


@pytest.mark.parametrize("meters", [0.8, 1.5])
def test_a_distance_is_kept(small: Tree, library: Library, meters: float) -> None:
    """The text is as large as the distance takes, on as many sheets as that takes."""
    wall = wall_layout(small, library, PAPERS["a4"], meters)
    assert wall.charts
    assert all(reads_from(chart.small_size) >= meters for chart in wall.charts)


def test_a_distance_that_takes_too_many_sheets_is_refused_with_what_fits(
    small: Tree, library: Library
) -> None:
    """Asked for five meters, the refusal names a distance, and that one can be printed."""
    with pytest.raises(TooFarError) as refused:
        wall_layout(small, library, PAPERS["letter"], 5)
    fits = re.search(r"`--distance ([0-9.]+)m` fits on (\d) sheet", str(refused.value))
    assert fits
    assert float(fits[1]) < 5
    wall = wall_layout(small, library, PAPERS["letter"], float(fits[1]))
    assert len(wall.charts) <= int(fits[2]) <= MOST_SHEETS


def test_every_sheet_has_the_legend_and_names_every_hazard(lamp: Tree, library: Library) -> None:
    """Sheets come off the wall singly: signs that only the first explains would be lost."""
    pages = read(wall_chart(lamp, library, "a4", 0.8)).pages
    hazards = {str(hazard) for step in lamp.steps.values() for hazard in step.hazards}
    assert len(pages) > 1
    assert hazards
    for page in pages:
        text = " ".join(page.extract_text().split())
        assert "results leave here" in text
        for name in hazards:
            short = library.hazards[name].short
            assert short[1:] in text


def test_the_wall_has_the_large_paper_beside_the_shops(small: Tree, library: Library) -> None:
    """A shop that prints on Letter or A4 hangs Tabloid or A3 on the wall."""
    sizes = {
        shop: round(float(read(wall_chart(small, replace(
            library, shop=replace(library.shop, paper=shop)))).pages[0].mediabox.height))
        for shop in ("letter", "a4", "a3")
    }  # fmt: skip
    assert sizes == {"letter": 1224, "a4": 1191, "a3": 1191}


def test_a_sheet_says_what_it_is(small: Tree, library: Library) -> None:
    """Revision, review, page, and who comes first stand on every sheet; a draft says so."""
    reader = read(wall_chart(small, library, "a4", 1.1))
    count = len(reader.pages)
    assert count > 1
    for number, page in enumerate(reader.pages, start=1):
        text = " ".join(page.extract_text().split())
        assert f"sheet {number} of {count}" in text
        assert number == 1 or text.startswith(f"{small.title} Sheet {number} of {count}")
        assert f"revision {small.revision}, reviewed 2026-09-01 by M. Lind" in text
        assert "Uncontrolled when printed" in text
        assert "maker's service information, local codes and licensed practice come first" in text


def test_every_tree_can_be_printed(trees: tuple[Tree, ...], library: Library) -> None:
    """On the shop's own paper every link in the file has its place."""
    for tree in trees:
        assert wall_chart(tree, library).startswith(b"%PDF-")


@pytest.mark.parametrize("paper", ["a4", "letter", "tabloid"])
def test_no_words_of_a_first_sheet_run_into_others(
    trees: tuple[Tree, ...], library: Library, paper: str
) -> None:
    """However many cautions a tree has, head, contents, legend and foot keep apart."""
    every = tuple(Text(name) for name in library.hazards)
    worst = max(trees, key=lambda tree: len({h for s in tree.steps.values() for h in s.hazards}))
    start = replace(worst.start, hazards=every)
    dangerous = replace(worst, steps={**worst.steps, str(start.id): start})
    for tree in (dangerous, *trees) if paper == "a4" else (dangerous,):
        with pdfplumber.open(BytesIO(wall_chart(tree, library, paper))) as document:
            assert run_into(document.pages[0]) == [], tree.id


def run_into(page: Page) -> list[str]:
    """Return the letters that begin before the middle of another and overlap it in height."""
    chars = sorted((c for c in page.chars if c["text"].strip()), key=lambda char: char["x0"])
    found = []
    for at, one in enumerate(chars):
        middle = (one["x0"] + one["x1"]) / 2
        for other in islice(chars, at + 1, None):
            if other["x0"] >= middle:
                break
            shared = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"])
            if shared > 0.4 * min(char["bottom"] - char["top"] for char in (one, other)):
                found.append(one["text"] + other["text"])
    return found


def test_cautions_stand_at_the_top(
    lamp: Tree, library: Library, pdf: bytes, trees: tuple[Tree, ...]
) -> None:
    """Every hazard of the tree is there by its name; in full where there is room for it."""
    (horn,) = (tree for tree in trees if tree.id == "horn/silent")
    loud = library.hazards["loud-horn"]
    full = f"{loud.hazard}. {loud.harm}. {loud.avoid}"
    assert full in _words_of_first_page(wall_chart(horn, library, "a4"))
    text = _words_of_first_page(pdf)
    steps = lamp.steps.values()
    states = (library.conditions[need.condition] for step in steps for need in step.needs)
    names = {hazard for one in (*steps, *states) for hazard in one.hazards}
    assert {"battery-gas", "exhaust-gas"} <= names  # of a step, and of a state alone
    for name in names:
        assert capitalized(library.hazards[name].short) in text


def _words_of_first_page(pdf: bytes) -> str:
    return " ".join(read(pdf).pages[0].extract_text().split())


def test_a_scope_of_one_year_names_it_once(small: Tree, library: Library) -> None:
    """A tree for 2019 is headed 2019, not 2019 to 2019."""
    one_year = Scope(NOWHERE, Text("Corvane"), Text("Tern"), (2019, 2019))
    head = head_of(replace(small, applies_to=(one_year,)), library, numbering(small))
    (line,) = (words for words in head.particulars if words.startswith("For:"))
    assert line.startswith("For: Corvane Tern 2019. ")
