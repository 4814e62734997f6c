"""A drill in the page: what an attentive tech enters, by the attributes that anyone may rely on.

In: a page at the first step of a walk, the events of a drill in Python. Out: each screen is given
to `look`, and then left as the events say.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from playwright.sync_api import Page

from builder.walk.event_files import event_row
from builder.walk.job_state import JobState
from builder.walk.to_fill import asks_at
from builder.walk.told import row_of
from builder.walk.walk_tables import WalkTables

from .walker import do, leave

Look = Callable[[Page], None]
Press = Callable[[Page, str], None]  # presses a control, and waits for the next screen


def entered_states(state: JobState) -> list[JobState]:
    """Return every state of a walk, the first step first."""
    states = [state]
    while states[-1].before is not None:
        states.append(states[-1].before)
    return states[::-1][1:]


def drill_page(
    page: Page, tables: WalkTables, end: JobState, look: Look, press: Press = leave
) -> None:
    """Go the way of a drill; what has to be read or done first is read and done."""
    page.wait_for_selector("[data-step]:visible")
    for before, event in zip(entered_states(end), end.events[1:], strict=False):
        while do(page, "acknowledge").count():
            look(page)
            press(page, "acknowledge")
        row = event_row(event)
        if row["event"] == "acknowledge":
            continue
        look(page)
        choose(page, tables, before, row)
        press(page, "cannot-test" if row["event"] == "cannot_test" else "confirm")
    look(page)


def choose(page: Page, tables: WalkTables, before: JobState, event: Mapping[str, Any]) -> None:
    """Type or press what an event says, short of its confirm."""
    match event["event"]:
        case "fill":
            _fill(page, asks_at(tables, before)[0], event["value"])
        case "answer":
            _answer(page, tables, before, event)
        case "verify":
            page.locator(f'[data-result="{int(not event["passed"])}"]').click()


def _fill(page: Page, ask: Mapping[str, Any], value: str | Iterable[str]) -> None:
    if ask["one_of"]:
        page.locator(f'[data-choice="{ask["one_of"].index(value)}"]').click()
        return
    values = [value] if isinstance(value, str) else list(value)
    names = ask.get("limits") or [""]
    typed = values if ask.get("limits") else [", ".join(values)]
    for name, text in zip(names, typed, strict=True):
        page.locator(f'[data-reading="{name}"]').fill(text)


def _answer(page: Page, tables: WalkTables, before: JobState, event: Mapping[str, Any]) -> None:
    row = row_of(tables, before.frames[-1])
    phrases = {one["name"]: one.get("phrases", ()) for one in row["readings"]}
    for name, text in event.get("readings", {}).items():
        field = page.locator(f'[data-reading="{name}"]')
        if text in phrases.get(name, ()):
            field.and_(page.locator(f'[data-choice="{phrases[name].index(text)}"]')).click()
        else:
            field.fill(text)
    if not do(page, "confirm").count() or not event.get("readings"):
        page.locator(f'[data-result="{event["result"]}"]').click()
