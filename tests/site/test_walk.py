"""A walk on a phone: one step a screen, readings judged, jobs kept, the record as Python has it."""

import json
import re
from pathlib import Path
from typing import Any
from urllib.parse import urljoin

import jsonschema
import pytest
from playwright.sync_api import Browser, Page, expect

from builder.check.unchecked_library import read_library
from builder.reader.schemas.walk_schema import RECORD
from builder.reader.trees import read_tree
from builder.walk.compile_shop import walk_tables
from builder.walk.compile_tree import tree_table
from builder.walk.event_files import event_from
from builder.walk.job_state import Refused
from builder.walk.record import record_of
from builder.walk.reduce import replay

from .conftest import SHOP
from .screen_access import sheet_is_closed, violations
from .walker import do, get_ready, leave, opened_page, place, until_changed

SMALL = """
() => [...document.querySelectorAll("#walk :is(button, a, input, select, label.w-tick)")]
  .filter((one) => one.checkVisibility() && !one.matches(".w-tick input"))
  .map((one) => [one.outerHTML.slice(0, 90), one.getBoundingClientRect()])
  .filter(([, box]) => Math.min(box.width, box.height) < 43.9).map(([words]) => words)
"""
HIDDEN = """
() => {
  const shown = [...document.querySelectorAll("#walk :is(h1, [data-result], [data-reading])")];
  const first = [shown[0], shown.find((one) => one.matches("[data-reading], [data-result]"))];
  return first.filter(Boolean).map((one) => one.getBoundingClientRect())
    .filter((box) => box.top < 0 || box.bottom > innerHeight).length;
}
"""


def opened(page: Page, site: Path, tree: str, step: str = "") -> None:
    """Open a tree's walk, at its first step or at another; a page that is there isn't reloaded."""
    address, place = (site / f"trees/{tree}.html").as_uri(), f"#walk{step and '/'}{step}"
    if page.url.startswith(f"{address}#"):
        page.evaluate("location.hash = ''")
        page.wait_for_selector("#walk", state="hidden")
        page.evaluate("place => { location.hash = place; }", place)
        page.wait_for_url(re.compile("#walk/.+/"))  # with its job: it's drawn
    else:
        page.goto(address + place)
    get_ready(page)


def test_start_opens_the_first_step(chromium: Browser, whole: Path) -> None:
    """The button and the address `#walk` open the same step; one place is shown, once."""
    with opened_page(chromium) as page:
        page.goto((whole / "trees/charging/battery-lamp.html").as_uri())
        assert not page.locator("[data-step]:visible").count()
        do(page, "start").click()
        page.wait_for_selector("[data-step]:visible")
        assert place(page) == "charging/battery-lamp#record"
        opened(page, whole, "charging/battery-lamp")
        assert place(page) == "charging/battery-lamp#record"


def test_a_reading_names_its_result_and_leads_on(chromium: Browser, whole: Path) -> None:
    """12,6 is good: one button says why and where it leads; the others stay to be pressed."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").fill("12,6")
        expect(do(page, "confirm")).to_contain_text("12.6 V is within 12.2 to 13.2 V: good")
        expect(do(page, "confirm")).to_contain_text("Next: Charging voltage")
        assert page.locator("[data-result].out").count() == 2
        leave(page)
        assert place(page) == "charging/battery-lamp#running"


def test_near_a_limit_it_is_too_close_to_call(chromium: Browser, whole: Path) -> None:
    """At the limit nothing is decided; a result that the meter allows can be chosen."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "running")
        page.locator("[data-reading]").fill("13.2")
        expect(page.locator(".w-verdict")).to_contain_text("Too close to call")
        assert not do(page, "confirm").count()
        page.locator('[data-result="1"]').click()
        leave(page)
        assert record(page)["steps"][-1]["too_close"]


def test_against_a_reading_it_is_stated(chromium: Browser, whole: Path) -> None:
    """A result that the reading rules out asks once, and is recorded as stated."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").fill("12.6")
        page.locator('[data-result="0"]').click()
        expect(do(page, "confirm")).to_contain_text("against the reading: stated")
        leave(page)
        assert record(page)["steps"][-1]["stated"]


def test_cautions_stand_on_the_step_where_all_fits(chromium: Browser, samples: Path) -> None:
    """They are read there, then the results come, side by side if need be; else lines join."""
    with opened_page(chromium) as page:
        page.goto((samples / "trees/brakes/hard-pedal.html").as_uri() + "#walk/helps")
        do(page, "acknowledge").wait_for()
        expect(page.locator("#walk .caution")).to_be_in_viewport(ratio=1)
        assert not page.locator("[data-result]").count()
        leave(page, "acknowledge")
        assert not page.locator("#walk .caution").count()
        page.locator('[data-result="1"]').click()
        leave(page)
        tree = samples / "trees/steering/assist-lamp-after-module-swap.html"
        page.goto(f"{tree.as_uri()}?vehicle=tern#walk/bind")
        leave(page, "acknowledge")
        assert page.locator(".w-results.columns > *").count() == 2, "side by side before a screen"
        page.goto((samples / "trees/brakes/soft-pedal.html").as_uri() + "#walk/clamps")
        page.reload()
        leave(page, "acknowledge")
        assert page.locator("[data-result]").count(), "one screen before the check at most"


def test_keys_type_a_reading(chromium: Browser, whole: Path) -> None:
    """The pad types digits and OL; check, field and verdict stay in view beside it."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").click()
        for key in "12.6":
            page.locator(".w-pad button", has_text=key).first.click()
        expect(page.locator("[data-reading]")).to_have_value("12.6")
        expect(do(page, "confirm")).to_be_in_viewport(ratio=1)
        expect(page.locator("#walk h1")).to_be_in_viewport(ratio=1)


def test_nothing_shown_is_a_reading(chromium: Browser, samples: Path) -> None:
    """Its key gives the result for it, and the walk goes on with that."""
    with opened_page(chromium) as page:
        page.goto((samples / "trees/charging/lamp-on.html").as_uri() + "?vehicle=tern#walk/sense")
        get_ready(page)
        page.locator("[data-reading]").tap()
        page.get_by_text("Nothing shown").tap()
        leave(page)
        step = record(page)["steps"][-1]
    assert (step["result"], step["readings"][""]["value"]) == ("none", "nothing shown")


def test_a_lookup_keeps_what_was_typed(chromium: Browser, whole: Path) -> None:
    """A sheet opens over the step; back closes it, and a reload keeps the reading too."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").fill("12.6")
        page.locator(".w-links button").first.click()
        expect(page.locator("dialog[open]")).to_be_visible()
        page.go_back()
        expect(page.locator("dialog[open]")).to_have_count(0)
        expect(page.locator("[data-reading]")).to_have_value("12.6")
        page.reload()
        page.wait_for_selector("[data-step]:visible")
        expect(page.locator("[data-reading]")).to_have_value("12.6")


def test_back_is_one_step_back(chromium: Browser, whole: Path) -> None:
    """The browser's back undoes the last answer, and the bar's own does the same."""
    with opened_page(chromium) as page:
        opened(page, whole, "horn/silent")
        first = place(page)
        for back in (page.go_back, lambda: do(page, "back").click()):
            page.locator('[data-result="0"]').click()
            leave(page)
            assert place(page) != first
            before = page.evaluate("history.state")
            back()
            until_changed(page, before)
            assert place(page) == first


def test_a_changed_answer_strikes_out_what_no_longer_follows(
    chromium: Browser, whole: Path
) -> None:
    """The trail opens an answer again; what was measured after it stays visible, struck out."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        for typed in ("12.6", "12.9"):
            get_ready(page)
            page.locator("[data-reading]").fill(typed)
            leave(page)
        page.locator(".w-trail button").first.click()
        page.locator("dialog .w-done button").first.click()
        before = page.evaluate("history.state.walk")
        page.locator("dialog .w-results button").first.click()
        expect(page.locator("dialog[open]")).to_have_count(0)
        until_changed(page, before)
        page.locator(".w-trail button").first.click()
        expect(page.locator("dialog s").last).to_contain_text("12.9 V")


def test_practice_shows_what_is_there_to_the_end(chromium: Browser, samples: Path) -> None:
    """What the vehicle shows leads to its fix and through its tests; what isn't ticked is said."""
    with opened_page(chromium) as page:
        page.goto((samples / "trees/horn/silent.html").as_uri() + "#walk//practice")
        page.wait_for_selector("[data-step]:visible")
        while not page.locator("[data-end]").count():
            seen = page.locator(".w-shows").inner_text().removeprefix("The vehicle shows: ")
            page.locator("[data-result]", has_text=re.compile(f"{seen}$", re.IGNORECASE)).tap()
            expect(do(page, "confirm")).to_contain_text("not ticked")
            leave(page)
        leave(page)
        expect(page.locator(".w-shows")).to_have_text("The vehicle shows: It passes now.")
        number = int(page.locator(".w-trail > b").inner_text().removeprefix("Step "))
        assert page.locator(".w-trail button").count() == number - 1
        page.locator(".w-trail button").last.tap()
        expect(page.locator("dialog small").first).to_have_text(
            "Not ticked: Turn the key on, leave the engine off"
        )


def test_none_of_these_keeps_what_was_seen(chromium: Browser, whole: Path) -> None:
    """It asks for a line and ends at the person to call, with a link that dials."""
    with opened_page(chromium) as page:
        opened(page, whole, "horn/silent")
        do(page, "none").click()
        page.locator("dialog input").fill("it hums")
        leave(page)
        expect(page.locator('[data-end="stuck"]')).to_be_visible()
        assert page.locator('a[href^="tel:"]').count() == 1
        assert record(page)["steps"][-1]["seen"] == "it hums"


def test_what_is_in_the_way_is_asked_where_nothing_leads_on(chromium: Browser, whole: Path) -> None:
    """A line may be written for the person to call; where another step follows, none is asked."""
    with opened_page(chromium) as page:
        opened(page, whole, "horn/silent")
        do(page, "cannot-test").click()
        page.locator("dialog input").fill("no lift")
        leave(page)
        expect(page.locator('[data-end="stuck"] h1')).to_have_text("Can’t be tested here")
        expect(page.locator("#walk")).to_contain_text("In the way: no lift")
        assert record(page)["steps"][-1]["seen"] == "no lift"
        opened(page, whole, "fuel/smell", "vacuum")
        leave(page, "cannot-test")
        assert not page.locator("[data-end]").count()


def test_the_job_is_on_the_home_page(chromium: Browser, whole: Path) -> None:
    """Left in the middle it's listed with where it is, and goes on there."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").fill("12.6")
        leave(page)
        here = place(page)
        page.wait_for_timeout(300)
        page.goto((whole / "index.html").as_uri())
        expect(page.locator(".job")).to_contain_text("Charging voltage at the battery posts")
        page.locator(".job").click()
        page.wait_for_selector("[data-step]:visible")
        assert place(page) == here


def test_a_record_is_a_job_again(chromium: Browser, whole: Path, tmp_path: Path) -> None:
    """The saved file follows its schema, Python plays it to the same record, a page takes it in."""
    with opened_page(chromium) as page:
        opened(page, whole, "charging/battery-lamp", "rest")
        page.locator("[data-reading]").fill("12.6")
        leave(page)
        here, saved = place(page), record(page)
    jsonschema.validate(saved, RECORD)
    assert {**played(saved["events"]), "job": saved["job"]} == saved
    file = tmp_path / "job.json"
    file.write_text(json.dumps(saved), "utf-8")
    with opened_page(chromium) as page:
        page.goto((whole / "index.html").as_uri())
        page.locator("#jobs input").set_input_files(file)
        page.locator(".job").click()
        page.wait_for_selector("[data-step]:visible")
        assert place(page) == here


def test_the_tech_s_words_are_in_the_record(chromium: Browser, samples: Path) -> None:
    """At a fix, an answer for several things is narrowed, the cause is written: both are kept.

    A complaint of several parts is asked for; that all of it is explained is an answer.
    """
    with opened_page(chromium) as page:
        opened(page, samples, "charging/lamp-on", "belt")
        page.locator("button.w-job").click()
        page.locator("#w-job-said").fill("Light is on, and it shakes")
        page.locator("#w-job-who").fill("R. Osei")  # leaves the field before
        page.keyboard.press("Escape")
        page.locator("[data-result='1']").click()
        leave(page)
        get_ready(page)
        do(page, "papers").click()
        page.locator("dialog .w-links button").nth(1).click()
        page.locator('[data-own="cause"]').fill("The belt was loose")
        page.locator("dialog button", has_text="All of it is explained").click()
        do(page, "keep").click()
        expect(page.locator("dialog[open]")).to_have_count(0)
        expect(do(page, "papers")).to_have_text("Words for the papers")
        (words,) = record(page)["write_up"].values()
    assert (words["cause"], words["complaint"]) == ("The belt was loose", "none")
    assert words["belt"]


def test_a_fix_of_one_of_several_parts_asks_for_its_place(chromium: Browser, samples: Path) -> None:
    """Which side, axle, or cylinder: typed once, it is in the record for both papers."""
    with opened_page(chromium) as page:
        opened(page, samples, "brakes/soft-pedal", "leak")
        page.locator("[data-result]", has_text="wheel").first.click()
        leave(page)
        get_ready(page)
        expect(do(page, "papers")).to_have_text("Papers: say which it was")
        do(page, "papers").click()
        page.locator('[data-own="where"]').fill("left rear")
        do(page, "keep").click()
        expect(page.locator("dialog[open]")).to_have_count(0)
        (words,) = record(page)["write_up"].values()
    assert words == {"where": "left rear"}


def test_an_end_asks_for_what_its_papers_lack(chromium: Browser, samples: Path) -> None:
    """One tap says that no DTC was stored, one line who took over; then nothing is missing."""
    with opened_page(chromium) as page:
        opened(page, samples, "charging/lamp-on", "unproved")
        lacks = page.get_by_text("Not ready to file: DTCs before the repair, who took it over.")
        expect(lacks).to_be_visible()
        do(page, "papers").click()
        page.locator("dialog button", has_text="None stored").click()
        page.locator('[data-own="handed"]').fill("M. Lind")
        do(page, "keep").click()
        expect(lacks).to_have_count(0)
        (words,) = record(page)["write_up"].values()
    assert words == {"codes": "none stored", "handed": "M. Lind"}


def record(page: Page) -> dict[str, Any]:
    """Return the record as the page saves it."""
    if not do(page, "record").count():
        page.locator(".w-job").click()
    with page.expect_download() as download:
        do(page, "record").last.click()
    saved: dict[str, Any] = json.loads(download.value.path().read_text("utf-8"))
    if page.locator("dialog[open]").count():
        page.locator(".w-close").click()
        sheet_is_closed(page)
    return saved


def played(rows: list[dict[str, Any]]) -> dict[str, Any]:
    """Return the record that Python gets from the events of a record."""
    library, _ = read_library(SHOP)
    id_ = rows[0]["tree"]
    tree, _ = read_tree(SHOP, SHOP / library.trees[id_].file)
    assert tree
    events = [event_from(row) for row in rows]
    state = replay(
        walk_tables(library, {id_: tree_table(tree, library)}),
        [event for event in events if not isinstance(event, Refused)],
    )
    assert not isinstance(state, Refused)
    again: dict[str, Any] = json.loads(json.dumps(record_of(state)))
    return again


@pytest.mark.parametrize("tree", ["charging/lamp-on", "brakes/soft-pedal"])
def test_a_step_fits_the_smallest_screen(chromium: Browser, samples: Path, tree: str) -> None:
    """Check and first answer are in view without scrolling, at 360 by 640; targets fit gloves."""
    text = (samples / f"walks/{tree}.js").read_text("utf-8")
    table = json.loads(text.partition(" = ")[2].partition(";\nbaytreeTables")[0])
    checks = [id_ for id_, row in table["steps"].items() if row["kind"] == "check"]
    assert checks
    with opened_page(chromium) as page:
        hidden = []
        for step in checks:
            opened(page, samples, tree, step)
            assert page.evaluate(SMALL) == []
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
            hidden += [step] * page.evaluate(HIDDEN)
    assert len(hidden) <= len(checks) * 0.05, hidden


def test_a_tree_opened_from_a_vehicle_draws_its_pins(chromium: Browser, samples: Path) -> None:
    """No vehicle is asked for: the step names pin and color, and one press shows the pin marked."""
    with opened_page(chromium, bypass_csp=True) as page:
        page.goto((samples / "vehicles/tern.html").as_uri())
        link = page.locator('.row[href*="charging/lamp-on.html"]').get_attribute("href")
        page.goto(urljoin(page.url, f"{link}#walk/sense"))
        get_ready(page)
        page.get_by_text("Alternator pin 2: yellow").click()
        face = page.locator("dialog svg.face")
        expect(face.locator(".on")).to_have_text("2")
        assert face.locator(".face-pin").all_text_contents() == ["1", "2", "3"]
        assert violations(page) == []
        assert page.evaluate("document.querySelector('dialog').scrollWidth - innerWidth") <= 0


def test_without_scripts_the_page_is_the_list_of_steps(chromium: Browser, whole: Path) -> None:
    """Without scripts Start leads to the first step of the list, and nothing of a walk is there."""
    with opened_page(chromium, java_script_enabled=False) as page:
        page.goto((whole / "trees/horn/silent.html").as_uri())
        do(page, "start").click()
        assert "#step-" in page.url
        assert not page.locator("[data-step]").count()
        assert page.locator("a.way").count() > 3
