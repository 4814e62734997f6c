"""No violation that axe-core knows on any screen of a walk: light, dark, text twice as large.

Here a few kinds of screens; `SCREENS=all python -m pytest -s tests/site/test_screen_access.py` goes
to every fix of the samples, into every sheet, and prints how many kinds there were.
"""

import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page

from builder.walk.practice import faults_of
from tests.walk.drilled import drilled_fix, drilled_shop

from .drilled_page import drill_page
from .screen_access import TEXT_SIZE, ScreenAccess, sheet_is_closed
from .test_walk import opened
from .walker import FINGER, do, get_ready, leave, opened_page

ASKED = os.environ.get("SCREENS", "")
SAMPLES = Path(__file__).parents[1] / "samples"
LONGEST = 40  # screens of a walk without a plan
Walk = Callable[[Page, Path, ScreenAccess], None]


def few(page: Page, site: Path, seen: ScreenAccess) -> None:
    """Look at cautions, lines, results, a reading on the keys, the job's sheet, ends."""
    page.goto((site / "trees/charging/lamp-on.html").as_uri() + "#walk/running")
    page.wait_for_selector("[data-step]:visible")
    seen.look(page)
    get_ready(page)
    page.locator("[data-reading]").click()
    page.locator("[data-reading]").fill("11.9")
    seen.look(page)
    page.locator(".w-job").click()
    page.locator("dialog[open]").wait_for()
    seen.look(page)
    page.keyboard.press("Escape")
    sheet_is_closed(page)
    for step in ("belt", "cable-fix", "hybrid"):
        opened(page, site, "charging/lamp-on", step)
        seen.look(page)


def drilled(page: Page, site: Path, seen: ScreenAccess) -> None:
    """Go to every fix, and look at each screen as it comes and at what is chosen or typed."""

    def press(wanted: Locator) -> None:
        seen.look(page)
        wanted.tap()

    known = drilled_shop(SAMPLES)
    for id_, tree in known.trees.items():
        for fix in faults_of(tree) if known.library.trees[id_].status != "retired" else ():
            job = drilled_fix(SAMPLES, id_, fix)
            assert job
            page.goto("about:blank")
            page.goto(f"{(site / f'trees/{id_}.html').as_uri()}?vehicle={job.state.vehicle}#walk")
            hand = replace(FINGER, press=press)
            drill_page(page, known.tables, job.state, seen.look_into, hand)


def practiced(page: Page, site: Path, seen: ScreenAccess) -> None:
    """Practice in every tree, by the first answer always, to whatever end."""
    for id_ in drilled_shop(SAMPLES).trees:
        page.goto("about:blank")
        page.goto((site / f"trees/{id_}.html").as_uri() + "#walk//practice")
        page.wait_for_selector("[data-step]:visible")
        for _ in range(LONGEST):
            seen.look_into(page)
            if not _gone_on(page):
                break


def _gone_on(page: Page) -> bool:
    """Leave a screen by whatever leads on; False at the end."""
    if do(page, "acknowledge").count():
        leave(page, "acknowledge")
        return True
    if page.locator('[data-choice="0"]').count():
        page.locator('[data-choice="0"]').first.tap()
    elif page.locator('[data-result="0"]').count() and not do(page, "confirm").count():
        page.locator('[data-result="0"]').tap()
    if page.locator("[data-reading]").count() and not do(page, "confirm").count():
        for field in page.locator("[data-reading]").all():
            field.fill("5")
    if do(page, "confirm").count():
        leave(page)
        return True
    return False


def interrupted(page: Page, site: Path, seen: ScreenAccess) -> None:
    """Look at a break, an answer that is changed, one for nothing, and the job on the home page."""
    opened(page, site, "charging/lamp-on", "belt")
    page.locator('[data-result="1"]').tap()
    leave(page)
    page.locator(".w-trail button").last.tap()
    page.locator("dialog .w-done button").first.tap()
    page.locator("dialog .w-results").wait_for()
    seen.look(page)
    page.locator("dialog .w-results button").first.tap()
    sheet_is_closed(page)
    page.locator(".w-trail button").last.tap()
    seen.look(page)
    page.locator(".w-close").tap()
    sheet_is_closed(page)
    page.locator(".w-job").tap()
    page.get_by_text("Pause", exact=True).tap()
    do(page, "resume").wait_for()
    seen.look(page)
    leave(page, "resume")
    opened(page, site, "charging/lamp-on", "belt")
    do(page, "none").tap()
    page.locator("dialog input").fill("it hums")
    leave(page)
    seen.look(page)
    page.goto((site / "index.html").as_uri() + "#jobs")
    page.locator(".job").first.wait_for()
    seen.look(page)


@pytest.mark.parametrize("size", ["100%", "200%"])
def test_everyone_can_use_every_screen(chromium: Browser, samples: Path, size: str) -> None:
    """No violation that axe-core knows, and nothing scrolls sideways."""
    seen = ScreenAccess()
    walks: tuple[Walk, ...] = (few, interrupted, drilled, practiced) if ASKED else (few,)
    for walk in walks:
        with opened_page(chromium, bypass_csp=True) as page:
            page.add_init_script(TEXT_SIZE % size)
            walk(page, samples, seen)
        print(f"{size}, {walk.__name__}: {len(seen.kinds)} kinds of screens and sheets so far")
        assert not seen.wrong
