"""A walk on a page, driven by the attributes that outside tests may rely on.

In: a browser, the address of a tree's page. Out: a page, and what it shows.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import Browser, Locator, Page

PHONE = {"width": 360, "height": 640}


@contextmanager
def opened_page(browser: Browser, **context: Any) -> Iterator[Page]:
    """Open a page on a small phone; any error in it fails the test."""
    opened = browser.new_context(viewport=PHONE, reduced_motion="reduce", **context)
    page = opened.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.on("console", lambda one: troubles.append(one.text) if one.type == "error" else None)
    yield page
    opened.close()
    assert not troubles, troubles


def do(page: Page, name: str) -> Locator:
    """Return the visible control for something to do."""
    return page.locator(f'[data-do="{name}"]:visible')


def place(page: Page) -> str:
    """Return where the walk is, as events name it: `charging/lamp-on#belt`."""
    shown = page.locator("[data-step]:visible")
    assert shown.count() == 1
    return f"{shown.get_attribute('data-in')}#{shown.get_attribute('data-step')}"


def get_ready(page: Page) -> None:
    """Read cautions and do lines until the step itself is shown."""
    page.wait_for_selector("[data-step]:visible")
    while do(page, "acknowledge").count():
        leave(page, "acknowledge")


def leave(page: Page, name: str = "confirm") -> None:
    """Press a control, and wait for the next screen: each has its own entry in the history."""
    before = page.evaluate("history.state")
    do(page, name).last.click()
    until_changed(page, before)


def until_changed(page: Page, before: object) -> None:
    """Wait until another entry of the history is shown."""
    for _ in range(100):
        if page.evaluate("history.state") != before:
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"the walk stays at {place(page)}: {page.locator('#walk').inner_text()}")
