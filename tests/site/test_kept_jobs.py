"""A job in a browser: what is lost, changed or refused on the way is said, and does no harm."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, Route, expect

from .conftest import serving
from .test_hostile import CORPUS
from .test_walk import record
from .walker import get_ready, leave, opened_page, place

TREE = "horn/silent"
FILL = """
() => {
  for (let count = 1e6; count >= 1; count /= 2) {
    const text = "x".repeat(count);
    try { for (;;) localStorage.setItem(`other ${localStorage.length}`, text); } catch { }
  }
}
"""


@pytest.fixture(scope="module")
def page(chromium: Browser, whole: Path) -> Iterator[Page]:
    """Open a page of a served site; its store is emptied by each job that begins."""
    with serving(whole) as address, opened_page(chromium, base_url=address) as page:
        yield page


def begun(page: Page) -> str:
    """Answer the first step of a new job; return where the walk is then."""
    page.goto("/about.html")
    page.evaluate("localStorage.clear()")
    page.goto(f"/trees/{TREE}.html#walk")
    get_ready(page)
    answer(page)
    return place(page)


def answer(page: Page) -> None:
    """Give the first answer, and go on."""
    page.locator('[data-result="0"]').tap()
    leave(page)


def says(page: Page, words: str) -> None:
    """Expect a message above the step."""
    expect(page.locator("#walk-notice")).to_contain_text(words)


def test_a_reload_in_the_middle_goes_on(page: Page) -> None:
    """The job is where it was, with its record; nothing has to be said."""
    here = begun(page)
    page.reload()
    get_ready(page)
    assert place(page) == here
    assert not page.locator("#walk-notice").count()
    assert len(record(page)["steps"]) == 1


def test_an_emptied_store_is_named(page: Page) -> None:
    """The page says that the job is gone, and begins one at the step of the address."""
    here = begun(page)
    page.evaluate("localStorage.clear()")
    page.reload()
    says(page, "no longer in this browser")
    assert place(page) == here


def test_a_tree_that_changed_names_the_steps(page: Page) -> None:
    """A step that was answered reads differently now: the job goes on, and says which."""
    here = begun(page)

    def with_another_text(route: Route) -> None:
        text = route.fetch().text().replace("Fuse of the horn", "Fuse 7 of the horn")
        route.fulfill(body=text, content_type="text/javascript")

    page.route(f"**/walks/{TREE}.js", with_another_text)
    page.reload()
    says(page, "This tree changed since you began. Different now: Fuse 7 of the horn")
    assert place(page) == here
    page.unroute(f"**/walks/{TREE}.js")


def test_two_tabs_on_one_job(page: Page) -> None:
    """The tab that is behind says so, and doesn't write over the other."""
    begun(page)
    other = page.context.new_page()
    other.goto(page.url)
    get_ready(other)
    answer(other)
    answer(page)
    says(page, "Another tab went on with this job")
    other.close()


def test_a_full_store_is_named(page: Page) -> None:
    """The walk goes on, and says that the file is the way to keep the job."""
    here = begun(page)
    page.evaluate(FILL)
    answer(page)
    says(page, "its storage is full. Save the record as a file")
    assert place(page) != here
    assert len(record(page)["steps"]) == 2


def test_a_closed_store_is_named(page: Page) -> None:
    """Where storage is blocked the walk goes on as well."""
    begun(page)
    page.evaluate("() => { Storage.prototype.setItem = () => { throw new Error('closed'); }; }")
    answer(page)
    says(page, "storage is blocked. Save the record as a file")


def hostile(saved: dict[str, Any]) -> dict[str, Any]:
    """Return a record with scripts in every text that someone typed, one of them of a megabyte."""
    text = " ".join(CORPUS)
    start, *rest = saved["events"]
    events = [
        {**start, "complaint": text * (1_000_000 // len(text) + 1)},
        *({**one, "who": text} for one in rest),
        {"event": "none_of_these", "seen": f"it hums {text}", "who": text, "at": text},
    ]
    job = dict.fromkeys(("title", "order", "vin", "year", "make", "model", "customer"), text)
    return {**saved, "job": job, "complaint": text, "vehicle": text, "events": events}


def test_a_hostile_record_harms_nothing(page: Page, tmp_path: Path) -> None:
    """Scripts stay text; what is no record, and a step that no tree has, are refused in words."""
    begun(page)
    saved = record(page)
    made_up = {"event": "answer", "step": "no-such-step", "result": 99}
    jobs = [hostile(saved), {**saved, "events": [*saved["events"], made_up]}]
    file = tmp_path / "jobs.json"
    page.goto("/index.html")
    for content, words in (({"tree": CORPUS[0]}, "is no record of a job"), ({"jobs": jobs}, "")):
        file.write_text(json.dumps(content), "utf-8")
        page.locator("#jobs input").set_input_files(file)
        expect(page.locator("#jobs .wrong")).to_contain_text(words)
    for name, words in (("RO <script>", "it hums"), ("Horn is silentStep 2: from", "still fits")):
        page.locator(".job", has_text=name).tap()
        get_ready(page)
        expect(page.locator("#walk")).to_contain_text(words)
        assert page.evaluate("globalThis.ran") is None
        assert record(page)["tree"] == TREE
        page.goto("/index.html")
