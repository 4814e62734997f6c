"""The bench page in a browser: the same answers as in Python, by keyboard, and for everybody."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import axe_playwright_python
import pytest
from playwright.sync_api import Browser, Page, expect

from builder.pages.bench_forms import FORMS

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "trade" / "cases" / "bench.json").read_text("utf-8")
)
AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")


@pytest.fixture(scope="module")
def bench(chromium: Browser, whole: Path) -> Iterator[Page]:
    """Open the page from a folder on a phone; any error in it fails the tests."""
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.on("console", lambda said: troubles.append(said.text) if said.type == "error" else None)
    page.goto((whole / "bench.html").as_uri())
    yield page
    context.close()
    assert not troubles


def test_the_page_gives_the_answers_of_the_table(bench: Page) -> None:
    """All cases that Python passes, the script passes too: lines, exact digits and mistakes."""
    asked = [[case["sum"], case["typed"]] for case in CASES]
    found = bench.evaluate(
        "asked => asked.map(([sum, typed]) => baytreeAnswers.answer(sum, typed))", asked
    )
    for case, one in zip(CASES, found, strict=True):
        lines = [[line["label"], line["text"], line["exact"]] for line in one["lines"]]
        assert (lines, one["mistakes"]) == (case["lines"], case["mistakes"]), case


def test_typing_gives_an_answer_while_one_types(bench: Page) -> None:
    """Two figures by keyboard alone, one in a unit of its own: the answer stands under the form."""
    bench.focus("#drop-volts")
    bench.keyboard.type("350 mV")
    bench.keyboard.press("Tab")
    bench.keyboard.press("Tab")
    bench.keyboard.type("35")
    answer = bench.locator("form[data-sum=drop] output")
    expect(answer).to_contain_text("Resistance: 10 mΩ")
    assert answer.get_attribute("aria-live") == "polite"


def test_the_unit_beside_a_field_counts_for_a_bare_figure(bench: Page) -> None:
    """0.06 with kΩ chosen beside it is 60 Ω."""
    bench.fill("#bus-ohms", "0.06")
    bench.select_option("form[data-sum=bus] select", "kohm")
    expect(bench.locator("form[data-sum=bus] output")).to_contain_text("both terminators there")


def test_a_field_that_makes_no_sense_says_so_beside_it(bench: Page) -> None:
    """The sentence is tied to its field, and goes when the field is put right."""
    bench.fill("#divider-supply", "5 A")
    wrong = bench.locator("#divider-supply-wrong")
    expect(wrong).to_have_text("A measures current; this reading is wanted in V")
    assert bench.get_attribute("#divider-supply", "aria-invalid") == "true"
    bench.fill("#divider-supply", "5")
    expect(wrong).to_be_hidden()
    assert bench.get_attribute("#divider-supply", "aria-invalid") is None


def test_what_is_typed_never_becomes_markup(bench: Page) -> None:
    """A field with markup in it is shown as it was typed."""
    bench.fill("#code-code", "<img src=x>")
    expect(bench.locator("#code-code-wrong")).to_contain_text("a code starts with P, C, B or U")
    bench.fill("#units-reading", "5 <b>V</b>")
    expect(bench.locator("#units-reading-wrong")).to_contain_text("<b>V</b> is no unit")


def test_the_examples_are_what_the_forms_answer(bench: Page) -> None:
    """The example under each form was worked out when the site was built: the script agrees."""
    for form in FORMS:
        found = bench.evaluate(
            "([sum, typed]) => baytreeAnswers.answer(sum, typed)", [form.id, dict(form.example)]
        )
        said = bench.locator(f"section[aria-labelledby={form.id}] .example").inner_text()
        assert found["lines"]
        assert all(line["text"] in said for line in found["lines"])


def test_everybody_can_use_it(chromium: Browser, whole: Path) -> None:
    """No violation that axe-core knows of, empty, answered and wrong; no sideways scroll."""
    context = chromium.new_context(bypass_csp=True, reduced_motion="reduce")
    page = context.new_page()
    page.goto((whole / "bench.html").as_uri())
    page.fill("#bus-ohms", "60")
    page.fill("#rest-volts", "14")
    page.fill("#code-code", "PO562")
    page.wait_for_selector("#code-code-wrong:not([hidden])")
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    page.evaluate(AXE)
    for width in (390, 1280):
        for look in ("light", "dark"):
            page.set_viewport_size({"width": width, "height": 844})
            page.emulate_media(color_scheme=look)
            found = page.evaluate("async () => (await axe.run(document)).violations")
            assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    sizes = page.eval_on_selector_all(
        ".sum input, .sum select, .sum summary, .jump a",
        "all => all.map((one) => [one.id || one.textContent, one.offsetHeight, one.offsetWidth])",
    )
    assert [size for size in sizes if min(size[1:]) < 44] == []
    context.close()


def test_without_scripts_it_says_so(chromium: Browser, whole: Path) -> None:
    """With scripts off no form is shown; the page says why, and the tables open all the same."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((whole / "bench.html").as_uri())
    expect(page.locator("noscript .banner")).to_be_visible()
    assert not page.locator("form[data-sum] >> visible=true").count()
    page.click("#bus ~ details:last-of-type summary")
    expect(page.locator("td:has-text('both terminators there')")).to_be_visible()
    context.close()
