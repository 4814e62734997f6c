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

from .walker import FINGER, Hand, do, leave

Look = Callable[[Page], None]


def entered_states(state: JobState) -> list[JobState]:
    """Return every state of a walk, the first step first."""
    states = [state]
    while states[-1].before is not None:
        states.append(states[-1].before)
    return states[::-1][1:]


def drill_page(
    page: Page, tables: WalkTables, end: JobState, look: Look, hand: Hand = FINGER
) -> None:
    """Go the way of a drill; what has to be read or done first is read and done."""
    page.wait_for_selector("[data-step]:visible")
    for before, event in zip(entered_states(end), end.events[1:], strict=False):
        while do(page, "acknowledge").count():
            look(page)
            leave(page, "acknowledge", hand)
        row = event_row(event)
        if row["event"] == "acknowledge":
            continue
        look(page)
        _choose(page, tables, before, row, hand)
        leave(page, "cannot-test" if row["event"] == "cannot_test" else "confirm", hand)
    look(page)


def _choose(
    page: Page, tables: WalkTables, before: JobState, event: Mapping[str, Any], hand: Hand
) -> None:
    """Type or press what an event says, short of its confirm."""
    match event["event"]:
        case "fill":
            _fill(page, asks_at(tables, before)[0], event["value"], hand)
        case "answer":
            _answer(page, row_of(tables, before.frames[-1]), event, hand)
        case "verify":
            hand.press(page.locator(f'[data-result="{int(not event["passed"])}"]'))


def _fill(page: Page, ask: Mapping[str, Any], value: str | Iterable[str], hand: Hand) -> None:
    if ask["one_of"]:
        hand.press(page.locator(f'[data-choice="{ask["one_of"].index(value)}"]'))
        return
    values = [value] if isinstance(value, str) else list(value)
    names = ask.get("limits") or [""]
    typed = values if ask.get("limits") else [", ".join(values)]
    for name, text in zip(names, typed, strict=True):
        hand.enter(page.locator(f'[data-reading="{name}"]'), text)


def _answer(page: Page, row: Mapping[str, Any], event: Mapping[str, Any], hand: Hand) -> None:
    phrases = {one["name"]: one.get("phrases", ()) for one in row["readings"]}
    for name, text in event.get("readings", {}).items():
        field = page.locator(f'[data-reading="{name}"]')
        if text in phrases.get(name, ()):
            hand.press(field.and_(page.locator(f'[data-choice="{phrases[name].index(text)}"]')))
        else:
            hand.enter(field, text)
    if not do(page, "confirm").count() or not event.get("readings"):
        hand.press(page.locator(f'[data-result="{event["result"]}"]'))
