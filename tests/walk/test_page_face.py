"""The page's script draws the same face of a connector as Python, and shows a step's pins on it."""

from pathlib import Path
from typing import TYPE_CHECKING

from builder.check.unchecked_library import read_library
from builder.pages.calculators import calculator_files
from builder.pages.connector_face import face_drawing
from builder.pages.walk_scripts import WALK_SCRIPTS, shop_script
from builder.web import WEB

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SAMPLES = Path(__file__).parents[1] / "samples"
SAME = """
([drawn, vehicle, id, marked]) => {
  const row = baytreeTables.shop.vehicles[vehicle].connectors[id];
  const place = document.createElement("div");
  place.innerHTML = drawn;
  return [place.innerHTML, baytreeFace.face(row, marked).outerHTML];
}
"""
SHEET = """
(at) => {
  const walk = { tables: baytreeTables, state: { vehicle: "tern" }, shown: { at } };
  const place = document.createElement("div");
  place.append(...baytreeFace.pinParts(walk).flat(3).filter(Boolean));
  return [place.textContent, place.querySelectorAll("svg.face").length,
    [...place.querySelectorAll("rect[fill]")].map((one) => one.getAttribute("fill"))];
}
"""
AT = [
    {"connector": "abs-module", "pin": "14", "role": "CAN-H", "wire": "OG/BK", "where": "Cowl"},
    {"connector": "abs-module", "pin": "15", "role": "CAN-L", "wire": "XX"},
    {"fuse": "21", "amps": "10", "box": "under the hood"},
]


def test_a_face_is_drawn_the_same_in_a_walk(browser: "Browser") -> None:
    """Every connector of the samples, with no pin marked and with all; then the sheet of a step."""
    library, _ = read_library(SAMPLES)
    page = browser.new_page()
    for text in (calculator_files(library)["trade-data.js"], shop_script(library)):
        page.add_script_tag(content=text)
    for name in (*WALK_SCRIPTS[1:], "connector-face.js"):  # the first is the data above
        page.add_script_tag(content=(WEB / name).read_text("utf-8"))
    vehicle = library.vehicles["tern"]
    for id_, connector in vehicle.connectors.items():
        for marked in ([], list(connector.pins)):
            drawn = str(face_drawing(connector, marked))
            expected, drawn_there = page.evaluate(SAME, [drawn, "tern", id_, marked])
            assert drawn_there == expected, id_
            assert expected.count("<text") == sum(map(len, connector.face)), id_
    words, faces, shades = page.evaluate(SHEET, AT)
    page.close()
    assert faces == 1, "one connector is drawn once, with both of its pins marked"
    for said in ("ABS module", "orange/blackOG/BK", "XX", "Fuse 21", "10 A, under the hood"):
        assert said in words
    assert shades == ["#f07d12", "#1b1b1b"], "a color that isn't known has no swatch"
