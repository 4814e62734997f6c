"""A walk by nothing but the attributes that outside tests may rely on, on a small phone.

`DRILLS=samples python -m pytest tests/site/test_contract.py` walks to every fix of every sample,
`DRILLS=demo` to every fix of the demo, and `DRILLS=all` to both: by touch, and to the first fix of
each tree also by keyboard alone.
"""

import os
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

import pytest
from playwright.sync_api import Browser, Page

from builder.walk.practice import faults_of
from tests.walk.drilled import drilled_fix, drilled_shop

from .conftest import build_shop
from .drilled_page import drill_page
from .test_walk import record
from .walker import FINGER, KEYBOARD, do, get_ready, leave, opened_page

SAMPLES = Path(__file__).parents[1] / "samples"
DEMO = Path(__file__).parents[2]
DRILLS = os.environ.get("DRILLS", "")
SHOPS = {"": [SAMPLES], "samples": [SAMPLES], "demo": [DEMO], "all": [SAMPLES, DEMO]}[DRILLS]
FEW = 6  # trees, where none is asked for


class Drill(NamedTuple):
    """A walk to a fix, and how the page is worked."""

    shop: Path
    tree: str
    fix: str
    hand: str


def drills() -> Iterator[Drill]:
    """Yield every fix by touch and the first of each tree by keyboard; or few trees by turns."""
    for shop in SHOPS:
        known = drilled_shop(shop)
        trees = [id_ for id_, one in known.library.trees.items() if one.status != "retired"]
        for at, id_ in enumerate(trees if DRILLS else trees[:FEW]):
            fixes = [*faults_of(known.trees[id_])]
            if DRILLS:
                yield from (Drill(shop, id_, fix, "touch") for fix in fixes)
            if DRILLS or at % 2:
                yield Drill(shop, id_, fixes[0], "keyboard")
            else:
                yield Drill(shop, id_, fixes[0], "touch")


HANDS = {"touch": FINGER, "keyboard": KEYBOARD}
CONTROLS = {"start", "acknowledge", "confirm", "back", "cannot-test", "none", "resume", "record"}
CONTROLS |= {"papers", "keep"}  # never needed to go on
SHOWN = """
() => {
  const marked = ["step", "in", "do", "result", "hazard"].map((name) => `[data-${name}]`);
  const shown = [...document.querySelectorAll(marked)].filter((one) => one.checkVisibility());
  const places = shown.filter(({ dataset }) => "step" in dataset || "in" in dataset);
  return {
    places: places.map(({ dataset }) => [dataset.step, dataset.in]),
    controls: shown.map(({ dataset }) => dataset.do).filter(Boolean),
    dead: shown.filter((one) => "result" in one.dataset && one.disabled).length,
    hazards: shown.map(({ dataset }) => dataset.hazard).filter(Boolean),
    results: shown.map(({ dataset }) => dataset.result).filter(Boolean),
  };
}
"""


def follows_the_contract(page: Page) -> None:
    """One place, known controls, results that can be pressed, cautions beside their button."""
    shown = page.evaluate(SHOWN)
    assert len(shown["places"]) == 1
    assert all(shown["places"][0])
    assert {*shown["controls"]} <= CONTROLS
    assert not shown["dead"]
    assert shown["results"] == [str(at) for at in range(len(shown["results"]))]
    if "acknowledge" in shown["controls"]:
        assert "confirm" not in shown["controls"]


@pytest.fixture(scope="module")
def site_of(samples: Path, tmp_path_factory: pytest.TempPathFactory) -> Callable[[Path], Path]:
    """Return the site of a shop; that of the demo is built once, and only where it is asked for."""

    @cache
    def built(shop: Path) -> Path:
        if shop == SAMPLES:
            return samples
        folder = tmp_path_factory.mktemp("demo") / "site"
        build_shop(shop, folder, cached=False)
        return folder

    return built


@pytest.fixture(scope="module")
def page_at(chromium: Browser) -> Iterator[Callable[[str], Page]]:
    """Return a page at an address; one that is there already is left as it is, out of its walk."""
    kept: dict[str, Page] = {}
    with ExitStack() as opened:

        def at(address: str) -> Page:
            if address in kept:
                kept[address].evaluate("location.hash = ''")
                return kept[address]
            opened.close()
            kept.clear()
            kept[address] = opened.enter_context(opened_page(chromium))
            kept[address].goto(address)
            return kept[address]

        yield at


@pytest.mark.parametrize("drill", [pytest.param(one, id="-".join(one[1:])) for one in drills()])
def test_a_vehicle_with_a_fault_leads_to_its_fix(
    page_at: Callable[[str], Page], site_of: Callable[[Path], Path], drill: Drill
) -> None:
    """Each drill of Python ends at the same fix in the page, with the same steps in its record."""
    shop, tree, fix, hand = drill
    tables, job = drilled_shop(shop).tables, drilled_fix(shop, tree, fix)
    assert job
    file = site_of(shop) / f"trees/{tree}.html"
    page = page_at(f"{file.as_uri()}?vehicle={job.state.vehicle}")
    page.wait_for_selector("#walk", state="hidden")
    HANDS[hand].press(do(page, "start"))
    numbers = [0]

    def look(page: Page) -> None:
        follows_the_contract(page)
        numbers.append(int(page.locator(".w-trail > b").inner_text().removeprefix("Step ")))

    drill_page(page, tables, job.state, look, HANDS[hand])
    assert all(number <= before + 1 for before, number in pairwise(numbers)), numbers
    assert page.locator("[data-end]").get_attribute("data-end") == fix
    steps = record(page)["steps"]
    assert [(one["in"], one["step"], one["result"]) for one in steps] == [
        (one.inside, one.step, one.result) for one in job.state.steps
    ]
    assert [one["readings"] for one in steps] == [
        {name: {"value": read.value, "unit": read.unit, "typed": read.typed}
         for name, read in one.readings.items()} for one in job.state.steps
    ]  # fmt: skip


def test_a_break_and_the_person_to_call(chromium: Browser, samples: Path) -> None:
    """A paused job has a control to resume it; a result stays pressed; `stuck` is an end."""
    with opened_page(chromium) as page:
        page.goto((samples / "trees/charging/lamp-on.html").as_uri() + "#walk/belt")
        get_ready(page)
        page.locator('[data-result="1"]').click()
        assert do(page, "confirm").count() == 1
        page.locator(".w-undo").click()
        page.locator(".w-job").click()
        page.get_by_text("Pause", exact=True).click()
        do(page, "resume").wait_for()
        leave(page, "resume")
        get_ready(page)
        do(page, "none").click()
        page.locator("dialog input").fill("it hums")
        leave(page)
        assert page.locator("[data-end]").get_attribute("data-end") == "stuck"
