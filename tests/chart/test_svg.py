"""The chart in the page: names, links, order, and no word out of its box in a browser."""

import json
import re
import xml.etree.ElementTree as ET
from dataclasses import replace
from html import unescape
from pathlib import Path

import pytest
from goldens import looks_as_it_did
from playwright.sync_api import Browser
from shop import tree_of

from builder.chart.change_marks import NEW, ChangeMark, with_changes
from builder.chart.chart import Box, Chart, Rect, Shape
from builder.chart.flow import flow_of
from builder.chart.fonts import FACES
from builder.chart.hazard_marks import hazard_marks
from builder.chart.layout import one_sheet, page_chart, sheet_charts
from builder.chart.svg import svg
from builder.chart.text_fit import Room
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering

NAMESPACE = "{http://www.w3.org/2000/svg}"


def elements(text: str, tag: str) -> list[ET.Element]:
    """Return the SVG elements of a kind, in the order of the page."""
    return list(ET.fromstring(text).iter(NAMESPACE + tag))


def test_the_page_chart_looks_as_it_did(small: Tree) -> None:
    """The chart of the small tree, in one column."""
    looks_as_it_did(svg(page_chart(small)), "small")


@pytest.mark.parametrize(("style", "width"), [("right", 720), ("under", 450)])
def test_a_sheet_looks_as_it_did(small: Tree, library: Library, style: str, width: int) -> None:
    """The same tree in columns, in both styles, with the signs of its hazards and a review."""
    hazards = tuple(sorted(library.hazards))
    rest, wire = (replace(small.steps[name], hazards=hazards[:at])
                  for name, at in (("rest", 3), ("wire", 1)))  # fmt: skip
    tree = replace(small, steps={**small.steps, "rest": rest, "wire": wire})
    flow = flow_of(tree, library, hazard_marks(library.hazards.values()))
    flow = with_changes(flow, {"which": ChangeMark("CHANGED: minutes", ("was 12 V", "NEW", "")),
                               "well": ChangeMark(NEW)})  # fmt: skip
    looks_as_it_did(svg(one_sheet(flow, Room(width, 420, 390), style)), f"sheet-{style}")


def test_sheets_look_as_they_did(small: Tree) -> None:
    """Text so large that it takes several, with jumps between them."""
    charts = sheet_charts(flow_of(small), [Room(320, 300, 280)], 13).charts
    assert len(charts) > 1
    looks_as_it_did("".join(map(svg, charts)), "sheets")


def test_every_step_is_a_link_with_a_name(small: Tree) -> None:
    """A chart can be walked by Tab alone, and each stop says where it leads."""
    links = elements(svg(page_chart(small)), "a")
    assert all(link.get("href", "").startswith("#step-") for link in links)
    assert all(link.get("aria-label") for link in links)
    linked = {link.get("href", "")[len("#step-") :] for link in links}
    assert linked == set(small.steps)


def test_links_come_in_reading_order(small: Tree) -> None:
    """The order of the page is the order of the numbers."""
    ids = [link.get("id", "") for link in elements(svg(page_chart(small)), "a")]
    own = [name.removeprefix("box-") for name in ids if name]
    numbers = numbering(small)
    assert own == sorted(own, key=lambda step: numbers[step])


def test_a_step_is_linked_to_once(small: Tree) -> None:
    """A repeated fix has one anchor, or the page would have the same id twice."""
    ids = re.findall(r' id="([^"]+)"', svg(page_chart(small)))
    assert len(ids) == len(set(ids)) == len(small.steps)


def test_another_tree_is_linked_as_the_page_says(small: Tree) -> None:
    """The page knows the addresses of other trees, the chart does not."""
    drawn = svg(page_chart(small), lambda href: href.replace("tree:", "/trees/"))
    assert 'href="/trees/network/module-silent#answers"' in drawn
    assert "tree:" not in svg(page_chart(small))


def test_a_chart_says_in_words_what_it_shows(small: Tree) -> None:
    """Who does not see the chart hears the usual way."""
    drawn = svg(page_chart(small))
    assert "<title>Chart: Lamp on, a small case</title>" in drawn
    (words,) = re.findall("<desc>(.*?)</desc>", drawn)
    assert unescape(words).startswith("11 steps. The usual way, straight down: 1 Record the codes;")


def test_the_ground_of_a_signal_word_has_the_corners_of_its_box() -> None:
    """It is as wide as the box, and rounded above where the box is."""
    box = Box("a", "fix", Shape.TERMINATOR, Rect(2, 2, 90, 30), panel=14, signal="WARNING")
    drawn = svg(Chart("Lamp on", "", 94, 34, 1, (box, replace(box, shape=Shape.PROCESS))))
    assert '<path class="panel warning" d="M2 16v-5a9 9 0 0 1 9 -9h72a9 9 0 0 1 9 9v5z"/>' in drawn
    assert '<rect class="panel warning" x="2" y="2" width="90" height="14"/>' in drawn


def test_no_color_and_no_script_stand_in_the_drawing(small: Tree) -> None:
    """Light, dark and the strict policy of the page leave looks to the style sheet."""
    drawn = svg(page_chart(small))
    assert not re.search(r"style=|<style|<script|fill=|stroke=|\son\w+=|#[0-9a-f]{3,6}\b", drawn)


def test_an_author_cannot_break_out_of_the_drawing() -> None:
    """Markup in a title, a step or a result is shown as it was written."""
    nasty = '"><b onload=alert(1)>'
    tree = tree_of(f"""\
        format: 2
        title: 'T {nasty}'
        status: draft
        system: charging
        symptom: {{words: [it is so]}}
        steps:
          one:
            check: 'C {nasty}'
            when: ['W {nasty}']
            results:
              - {{result: 'R {nasty}', means: 'M {nasty}', branch: two}}
              - {{result: other, branch: two}}
          two: {{stop: 'S {nasty}', kind: foreman}}
        """)
    drawn = svg(page_chart(tree))
    shown = " ".join("".join(element.itertext()) for element in elements(drawn, "text"))
    assert "<b" not in drawn
    assert "alert(1)" in shown


def test_each_picture_holds_what_belongs_to_it(trees: tuple[Tree, ...], library: Library) -> None:
    """Cut between blocks, no part is lost and none is drawn twice."""
    for tree in trees:
        chart = page_chart(tree, library)
        drawn = svg(chart)
        links = [box for box in chart.boxes if box.href.startswith("#")]
        assert len(elements(drawn, "a")) == len(links), tree.id
        assert len(elements(drawn, "text")) == sum(
            len(part.runs) for part in (*chart.boxes, *chart.labels)
        ), tree.id


MEASURE = """() => [...document.querySelectorAll('.box')].flatMap(box => {
  const frame = box.querySelector('.symbol').getBoundingClientRect();
  return [...box.querySelectorAll('text')].map(text => {
    const place = text.getBoundingClientRect();
    return [text.textContent, place.left - frame.left, frame.right - place.right,
            place.top - frame.top, frame.bottom - place.bottom];
  });
})"""


def test_every_word_stands_in_its_box_in_a_browser(
    trees: tuple[Tree, ...], library: Library, tmp_path: Path, browser: Browser
) -> None:
    """At 390 and 1280 px, no string of any tree of the shop stands out of its box."""
    looks = (FACES.parent / "chart.css").read_text().replace('url("', f'url("{FACES.as_uri()}/')
    drawn = "".join(svg(page_chart(tree, library)) for tree in trees)
    page_file = tmp_path / "charts.html"
    page_file.write_text(f"<!doctype html><meta charset=utf-8><style>{looks}</style>{drawn}")
    for width in (390, 1280):
        page = browser.new_page(viewport={"width": width, "height": 800})
        page.goto(page_file.as_uri())
        page.evaluate("document.fonts.ready")
        assert page.evaluate("""document.fonts.check('10px "Baytree Sans"')""")
        measured = page.evaluate(MEASURE)
        strings = sum(len(b.runs) for t in trees for b in page_chart(t, library).boxes)
        assert len(measured) == strings
        out = [row for row in measured if min(row[1:3]) < -0.5 or min(row[3:]) < -1.5]
        assert not out, json.dumps(out[:5])
        assert page.evaluate("document.documentElement.scrollWidth") <= width
