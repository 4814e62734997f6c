"""The calculators in a browser: the answers of Python, by keyboard, for everyone."""

import json
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import axe_playwright_python
import pytest
from playwright.sync_api import Browser, Page, expect

from builder.pages.calculator_forms import CALCULATOR_FORMS
from builder.trade.bus import bus_state, bus_states
from builder.trade.mistake import Mistake

CASES: list[dict[str, Any]] = json.loads(
    (Path(__file__).parents[1] / "trade" / "cases" / "calculators.json").read_text("utf-8")
)
AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")


@pytest.fixture(scope="module")
def page(chromium: Browser, whole: Path) -> Iterator[Page]:
    """Open the page from a folder on a phone; any error in it fails the tests."""
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.on(
        "console",
        lambda message: troubles.append(message.text) if message.type == "error" else None,
    )
    page.goto((whole / "calculators.html").as_uri())
    yield page
    context.close()
    assert not troubles


def test_the_page_gives_the_answers_of_the_table(page: Page) -> None:
    """All cases that Python passes, the script passes too: lines, exact digits and mistakes."""
    entered = [[case["calculator"], case["typed"]] for case in CASES]
    answers = page.evaluate(
        "all => all.map(([id, entries]) => baytreeCalculators.answer(id, entries))", entered
    )
    for case, one in zip(CASES, answers, strict=True):
        lines = [[line["label"], line["text"], line["exact"]] for line in one["lines"]]
        assert (lines, one["mistakes"]) == (case["lines"], case["mistakes"]), case


def test_the_page_names_both_of_two_overlapping_states(page: Page) -> None:
    """With the ranges of a loose tolerance the script names the same states as Python."""
    ohms = ["27", "34.2", "34", "48", "50", "61", "80", "100", "900", "1000"]
    for percent in (10, 15, 20, 34):
        states = bus_states(percent)
        assert not isinstance(states, Mistake)
        ranges = [
            [one.name, str(one.low), None if one.high is None else str(one.high)] for one in states
        ]
        texts = page.evaluate(
            """([ranges, ohms]) => {
                const { bus } = baytreeTrade.calculators, states = bus.states;
                bus.states = ranges;
                const texts = ohms.map((one) =>
                    baytreeCalculators.answer("bus", { ohms: one }).lines[0].text);
                bus.states = states;
                return texts;
            }""",
            [ranges, ohms],
        )
        assert texts == [bus_state(Fraction(one), percent) for one in ohms]


def test_the_answer_follows_as_you_type(page: Page) -> None:
    """Two numbers by keyboard alone, one in a unit of its own: the answer is under the form."""
    page.focus("#drop-volts")
    page.keyboard.type("350 mV")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.type("35")
    answer = page.locator("form[data-calculator=drop] output")
    expect(answer).to_contain_text("Resistance: 10 mΩ")
    assert answer.get_attribute("aria-live") == "polite"


def test_a_bare_number_takes_the_unit_beside_its_field(page: Page) -> None:
    """0.06 with kΩ chosen next to it is 60 Ω."""
    page.fill("#bus-ohms", "0.06")
    page.select_option("form[data-calculator=bus] select", "kohm")
    expect(page.locator("form[data-calculator=bus] output")).to_contain_text(
        "both terminators present"
    )


def test_a_mistake_is_explained_beside_its_field(page: Page) -> None:
    """The sentence is tied to its field, and goes when the field is put right."""
    page.fill("#divider-supply", "5 A")
    wrong = page.locator("#divider-supply-wrong")
    expect(wrong).to_have_text("A measures current; this reading is wanted in V")
    assert page.get_attribute("#divider-supply", "aria-invalid") == "true"
    page.fill("#divider-supply", "5")
    expect(wrong).to_be_hidden()
    assert page.get_attribute("#divider-supply", "aria-invalid") is None


def test_what_is_typed_never_becomes_markup(page: Page) -> None:
    """A field with markup in it is shown as it was typed."""
    page.fill("#dtc-code", "<img src=x>")
    expect(page.locator("#dtc-code-wrong")).to_contain_text("a code starts with P, C, B or U")
    page.fill("#units-reading", "5 <b>V</b>")
    expect(page.locator("#units-reading-wrong")).to_contain_text("<b>V</b> is no unit")


def test_the_examples_are_what_the_forms_answer(page: Page) -> None:
    """The example under each form was calculated when the site was built: the script agrees."""
    for form in CALCULATOR_FORMS:
        answer = page.evaluate(
            "([id, entries]) => baytreeCalculators.answer(id, entries)",
            [form.id, dict(form.example)],
        )
        example = page.locator(f"section[aria-labelledby={form.id}] .example").inner_text()
        assert answer["lines"]
        assert all(line["text"] in example for line in answer["lines"])


def test_everyone_can_use_it(chromium: Browser, whole: Path) -> None:
    """No violation that axe-core knows of, empty, answered and wrong; no sideways scroll."""
    context = chromium.new_context(bypass_csp=True, reduced_motion="reduce")
    page = context.new_page()
    page.goto((whole / "calculators.html").as_uri())
    page.fill("#bus-ohms", "60")
    page.fill("#battery-charge-volts", "14")
    page.fill("#dtc-code", "PO562")
    page.wait_for_selector("#dtc-code-wrong:not([hidden])")
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    page.evaluate(AXE)
    for width in (390, 1280):
        for look in ("light", "dark"):
            page.set_viewport_size({"width": width, "height": 844})
            page.emulate_media(color_scheme=look)
            violations = page.evaluate("async () => (await axe.run(document)).violations")
            assert [(one["id"], one["nodes"][0]["html"]) for one in violations] == []
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    sizes = page.eval_on_selector_all(
        ".calculator input, .calculator select, .calculator summary, .jump a",
        "all => all.map((one) => [one.id || one.textContent, one.offsetHeight, one.offsetWidth])",
    )
    assert [size for size in sizes if min(size[1:]) < 44] == []
    context.close()


def test_without_javascript_the_page_explains_itself(chromium: Browser, whole: Path) -> None:
    """Without JavaScript no form shows; the page says why, and the tables still open."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((whole / "calculators.html").as_uri())
    expect(page.locator("noscript .banner")).to_be_visible()
    assert not page.locator("form[data-calculator] >> visible=true").count()
    page.click("#bus ~ details:last-of-type summary")
    expect(page.locator("td:has-text('both terminators present')")).to_be_visible()
    context.close()
