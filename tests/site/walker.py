"""A walk on a page, driven by the attributes that outside tests may rely on.

In: a browser, the address of a tree's page. Out: a page, and what it shows.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Browser, Locator, Page

PHONE = {"width": 360, "height": 640}
KEY_NAMES = {".": "Decimal point", "-": "Plus or minus"}
WHOLE_KEYS = {"OL": ["OL"], "nothing shown": ["Nothing shown"]}
IS_FOCUSED = "one => one === document.activeElement"


@dataclass(frozen=True)
class Hand:
    """How a tech works the page: presses something, types into a field."""

    press: Callable[[Locator], None]
    enter: Callable[[Locator, str], None]


def _tab_to(wanted: Locator) -> None:
    """Press Tab until the focus is there; on a new screen it begins at the heading."""
    for _ in range(60):
        if wanted.evaluate(IS_FOCUSED):
            return
        wanted.page.keyboard.press("Tab")
    raise AssertionError(f"Tab never reaches {wanted}")


def _press_key(wanted: Locator) -> None:
    _tab_to(wanted)
    wanted.page.keyboard.press("Enter")


def _type_keys(field: Locator, text: str) -> None:
    _tab_to(field)
    field.page.keyboard.press("Control+a")  # what is offered is typed over
    field.page.keyboard.type(text)


def _tap_keys(field: Locator, text: str) -> None:
    """Type on the page's own keys, where the field has the unit; else on those of the phone."""
    field.tap()
    keys, (number, _, unit) = field.page.locator(".w-pad"), text.partition(" ")
    units = field.locator("xpath=..").locator("select")
    if text not in WHOLE_KEYS and unit and units.count():
        units.select_option(unit)
    if not keys.count():
        field.fill(text)
        return
    for key in WHOLE_KEYS.get(text, number):
        keys.get_by_role("button", name=KEY_NAMES.get(key, key), exact=True).tap()


FINGER = Hand(press=lambda wanted: wanted.tap(), enter=_tap_keys)
KEYBOARD = Hand(press=_press_key, enter=_type_keys)


@contextmanager
def opened_page(browser: Browser, **context: Any) -> Iterator[Page]:
    """Open a page on a small phone; any error in it fails the test."""
    opened = browser.new_context(viewport=PHONE, has_touch=True, reduced_motion="reduce", **context)
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


def leave(page: Page, name: str = "confirm", hand: Hand = FINGER) -> None:
    """Press a control, and wait for the next screen: each has its own entry in the history."""
    before = page.evaluate("history.state")
    hand.press(do(page, name).last)
    until_changed(page, before)


def until_changed(page: Page, before: object) -> None:
    """Wait until another entry of the history is shown."""
    for _ in range(100):
        if page.evaluate("history.state") != before:
            return
        page.wait_for_timeout(50)
    raise AssertionError(f"the walk stays at {place(page)}: {page.locator('#walk').inner_text()}")
