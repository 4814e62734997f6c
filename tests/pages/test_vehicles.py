"""The page of a vehicle: its connectors drawn, its pins beside their wires, its trees."""

import re
from decimal import Decimal
from pathlib import Path

import pytest

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.text import Text
from builder.model.vehicle_data import Connector, Pin
from builder.pages.connector_face import face_caption, face_drawing
from builder.pages.connectors import wire_swatch
from builder.pages.tree_catalog import catalog_trees
from builder.pages.vehicles import vehicle_pages
from builder.wording.value_text import torque_text

SAMPLES = Path(__file__).parents[1] / "samples"
CAVITY = re.compile(
    r'<g class="face-pin( on| free)?"><(circle|rect)[^>]*>(<path class="face-first".*?/>)?'
    r'<text x="(\d+)" y="(\d+)">(\w+)</text></g>'
)


@pytest.fixture(scope="module")
def library() -> Library:
    """Read the samples."""
    return read_library(SAMPLES)[0]


@pytest.fixture(scope="module")
def page(library: Library) -> str:
    """Return the page of a vehicle."""
    pages = {page.path: page.body for page in vehicle_pages(catalog_trees(library))}
    return pages["vehicles/tern"]


def test_a_pin_stands_beside_its_wire_and_fuse(page: str) -> None:
    """A tech finds the wire color of a pin by swatch, name and code, and the fuse with its amps."""
    row = re.sub(r"\s+", " ", page.partition('class="pin-number">2<')[2].partition("</tr>")[0])
    shade = '<rect y="0" width="36" height="21" fill="#f6d21f"/>'
    assert [shade in row, "<b>yellow</b>" in row, ">YE<" in row] == [True] * 3
    assert [">sense<" in row, 'href="#fuse-21">Fuse 21, 10&nbsp;A<' in row] == [True] * 2
    assert "service information comes first" in page


def test_the_pins_that_trees_ask_for_are_marked(page: str) -> None:
    """The pin is round, not only dark: no color is needed to see it; others stay square."""
    face = page.partition('id="connector-alternator"')[2].partition("</svg>")[0]
    found = [(look, shape, number) for look, shape, *_, number in CAVITY.findall(face)]
    assert found == [("", "rect", "1"), (" on", "circle", "2"), (" free", "rect", "3")]
    assert "Face with 3 cavities; marked: 2" in face


def test_a_tree_has_the_values_of_the_vehicle(page: str) -> None:
    """Each tree opens with this vehicle chosen; its limits, pins and torques stand beside it."""
    trees = page.partition('id="trees"')[2]
    row = trees.partition("charging/lamp-on.html?vehicle=tern")[2].partition("</li>")[0]
    assert "charging voltage 13.4 to 14.9 V" in row
    assert "alternator pin 2 yellow" in row
    assert "alternator post 9 lb-ft (12 N·m)" in row


def test_cavities_lie_as_listed_and_pin_1_is_marked() -> None:
    """Rows of another length stand in the middle; the corner is at pin 1, wherever that is."""
    pins = {number: Pin(Text(number), Text("lamp")) for number in "1234567"}
    face = (("3", "4"), ("5", "7", "6"), ("1", "2"))
    seven = Connector(Text("seven"), Text("socket"), pins, face=face)
    places = {number: (int(x), int(y)) for *_, x, y, number in CAVITY.findall(
        face_drawing(seven, ()))}  # fmt: skip
    left, right = places["3"][0], places["4"][0]
    assert (left + right) / 2 == places["7"][0]
    assert places["3"][1] < places["5"][1] == places["7"][1] == places["6"][1] < places["1"][1]
    assert [number for _, _, first, *_, number in CAVITY.findall(face_drawing(seven, ()))
            if first] == ["1"]  # fmt: skip


@pytest.mark.parametrize("side", ["top", "bottom", "left", "right"])
def test_the_tab_is_on_its_side(side: str) -> None:
    """Held the wrong way round, pin 1 is pin 3: the drawing shows the tab, the caption names it."""
    held = Connector(Text("c"), Text("c"), {}, face=(("1", "2", "3"),), tab=Text(side),
                     seen_from=Text("wire side"))  # fmt: skip
    rects = re.findall(r'<rect class="face-\w+"([^>]*)>', face_drawing(held, ()))
    tab, shell = ([*map(float, re.findall(r'"([\d.]+)"', rect)[:4])] for rect in rects)
    beyond = {
        "top": tab[1] < shell[1],
        "bottom": tab[1] + tab[3] > shell[1] + shell[3],
        "left": tab[0] < shell[0],
        "right": tab[0] + tab[2] > shell[0] + shell[2],
    }
    assert [name for name, is_there in beyond.items() if is_there] == [side]
    assert side in face_caption(held)
    assert "Seen from the wire side" in face_caption(held)


def test_an_unknown_color_has_no_swatch() -> None:
    """No drawing is better than a wrong one; the code stands in the table as it's written."""
    assert wire_swatch("XX 6 mm2") == ""
    assert wire_swatch("RD/WH").count("<rect") == 2


def test_a_torque_is_in_pound_feet_first() -> None:
    """110 N·m is 81 lb-ft: NIST SP 811 (2008), appendix B.8, 1 lbf·ft = 1.355818 N·m."""
    assert torque_text(Decimal(110)) == "81 lb-ft (110 N·m)"
