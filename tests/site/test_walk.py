"""Readings entered on a tree's page: the outcomes of Python, by keyboard, for everyone."""

import json
import random
import shutil
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

import axe_playwright_python
import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from builder.check.unchecked_library import read_library
from builder.reader.trees import read_tree
from builder.walk.follow import follow
from builder.walk.rows import WalkTable
from builder.walk.table import walk_table

from .conftest import SHOP, build_shop

TRADE = Path(__file__).parents[1] / "trade" / "cases"
WALK = Path(__file__).parents[1] / "walk" / "cases"
CASES: list[dict[str, Any]] = json.loads((WALK / "follow.json").read_text("utf-8"))
TREE = Path("trees") / "horn" / "checks.yml"
AXE = (Path(axe_playwright_python.__file__).parent / "axe.min.js").read_text("utf-8")
OUTCOME = ("state", "fits", "reads_as", "values", "errors", "mistakes")


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Copy the shop with a decimal comma and one tree, which has a check of every kind."""
    copy = Path(shutil.copytree(SHOP, tmp_path_factory.mktemp("walk") / "shop"))
    shutil.rmtree(copy / "trees")
    (copy / TREE).parent.mkdir(parents=True)
    shutil.copy(WALK / "checks.yml", copy / TREE)
    settings = copy / "site_config" / "shop.yml"
    settings.write_text(settings.read_text("utf-8").replace("mark: point", "mark: comma"), "utf-8")
    return copy


@pytest.fixture(scope="module")
def site(shop: Path) -> Path:
    """Build its site."""
    build_shop(shop, shop.parent / "site")
    return shop.parent / "site"


@pytest.fixture(scope="module")
def walk(shop: Path) -> WalkTable:
    """Return the walk table of that tree, as the page gets it: through JSON."""
    library, _ = read_library(shop)
    tree, _ = read_tree(shop, shop / TREE)
    assert tree
    table: WalkTable = json.loads(json.dumps(walk_table(tree, library)))
    return table


@pytest.fixture(scope="module")
def tree(chromium: Browser, site: Path) -> Iterator[Page]:
    """Open the tree from a folder on a phone; any error in the page fails the tests."""
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.on(
        "console",
        lambda message: troubles.append(message.text) if message.type == "error" else None,
    )
    page.goto((site / TREE).with_suffix(".html").as_uri())
    yield page
    context.close()
    assert not troubles


def card(page: Page, step: str) -> Locator:
    """Return the card of a step."""
    return page.locator(f"#step-{step}")


def test_the_page_gives_the_outcomes_of_the_table(tree: Page) -> None:
    """The script passes every case that Python passes, with the page's own table."""
    outcomes = tree.evaluate(
        """cases => {
            const table = JSON.parse(document.getElementById("walk-table").content.textContent);
            return cases.map(({ step, typed }) => baytreeFollow.follow(table, step, typed));
        }""",
        CASES,
    )
    for case, one in zip(CASES, outcomes, strict=True):
        assert one == {name: case[name] for name in OUTCOME}, case


def test_computed_readings_have_exact_digits(tree: Page) -> None:
    """The script passes the cases of `trade/`: twelve digits, or nothing."""
    cases = json.loads((TRADE / "computed.json").read_text("utf-8"))
    outcomes = tree.evaluate(
        """cases => cases.map(({ compiled, values }) => {
            const { read, run, rounded } = baytreeExact;
            const exact = Object.entries(values).map(([name, text]) => [name, read(text)]);
            const value = run(compiled, Object.fromEntries(exact));
            return value && rounded(value);
        })""",
        cases,
    )
    assert outcomes == [case["result"] for case in cases]


def test_page_and_python_agree_on_random_readings(tree: Page, walk: WalkTable) -> None:
    """Random readings, near limits and in other units, have the same outcome."""
    chance = random.Random(7)
    asked = [drawn(chance, walk) for _ in range(300)]
    outcomes = tree.evaluate(
        "([table, all]) => all.map(([step, typed]) => baytreeFollow.follow(table, step, typed))",
        [walk, asked],
    )
    for (step, typed), one in zip(asked, outcomes, strict=True):
        assert one == json.loads(json.dumps(asdict(follow(walk, step, typed)))), (step, typed)


def drawn(chance: random.Random, walk: WalkTable) -> tuple[str, dict[str, str]]:
    """Draw a step and the entries in its fields."""
    step = chance.choice(sorted(walk["steps"]))
    row = walk["steps"][step]
    ends = [
        str(cut[0]) for one in row["results"] for side in one["ranges"].values() for cut in side
    ]
    numbers = [end for end in ends if end[-1].isdigit()] or ["1"]
    typed = dict.fromkeys(row.get("figure", ()), "1.2")
    for one in row["readings"]:
        low, high = max(float(one["low"]), 0), min(float(one["high"]), 200)
        figure = chance.choice([f"{chance.uniform(low, high):.2f}", chance.choice(numbers), "OL"])
        other = chance.choice(["", "", " mV", " V", " kohm", " psi", " °F"])
        typed[one["name"]] = chance.choice(one.get("phrases") or [figure + other])
    return step, typed


def test_a_reading_shows_its_result_and_leads_there(tree: Page) -> None:
    """For 13,4 the result is named and marked, and a link leads to its step."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("13,4")
    answer = step.locator("output")
    expect(answer).to_contain_text("13,4 V: 13.2 to 14.8 V. Go to step")
    assert step.locator(".way.fits").count() == 1
    expect(step.locator(".way.fits")).to_contain_text("match")
    answer.locator("a").click()
    assert tree.evaluate("document.querySelector(':target').id") == "step-signed"


def test_too_close_to_call_names_the_tool_s_error(tree: Page) -> None:
    """13.2 with a multimeter proves neither side: both are marked, with the meter's error."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("13.2")
    expect(step.locator("output")).to_contain_text("too close to call")
    expect(step.locator("output")).to_contain_text("Multimeter: ±0,086 V")
    assert step.locator(".way.fits").count() == 2
    assert step.locator("text=possible").count() == 2


def test_a_computed_reading_combines_two_units(tree: Page) -> None:
    """Millivolts entered in volts, and amperes, give milliohms."""
    step = card(tree, "chain")
    step.get_by_label("Plus", exact=True).fill("0.5 V")
    expect(step.locator("output")).to_contain_text("Enter: amps")
    step.get_by_label("Amps", exact=True).fill("150")
    expect(step.locator("output")).to_contain_text("half 250 mV, bad 1,667 mΩ: ")


def test_a_bare_number_takes_the_unit_of_its_field(tree: Page) -> None:
    """0.061 with kΩ chosen is 61 Ω."""
    step = card(tree, "over")
    step.get_by_label("Reading", exact=True).fill("0.061")
    step.get_by_label("Unit of: Reading").select_option("kohm")
    expect(step.locator("output")).to_contain_text("61 Ω: 54 to 66 Ω")


def test_a_phrase_is_a_list_and_a_spec_is_asked_for(tree: Page) -> None:
    """Phrases are a list to choose from; the spec comes before the reading."""
    step = card(tree, "phrase")
    step.get_by_label("Lamp", exact=True).select_option("bright")
    expect(step.locator("output")).to_contain_text("bright")
    step = card(tree, "band")
    step.get_by_label("Reading", exact=True).fill("1.2")
    expect(step.locator("output")).to_contain_text("Enter: spec, low; spec, high")
    step.get_by_label("Spec, low", exact=True).fill("1")
    step.get_by_label("Spec, high", exact=True).fill("1.4")
    expect(step.locator("output")).to_contain_text("1,2 kΩ: within the figure")


def test_a_bad_entry_is_explained_at_its_field(tree: Page) -> None:
    """A reading out of range marks no result, and markup in an entry stays text."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("25")
    expect(step.locator(".wrong")).to_contain_text("25 V is outside 0 to 20 V")
    assert step.locator(".way.fits").count() == 0
    step.get_by_label("Reading", exact=True).fill("1 <b>")
    expect(step.locator(".wrong")).to_contain_text("<b> is no unit in use here")
    step.get_by_label("Reading", exact=True).fill("")
    expect(step.locator(".wrong")).to_be_hidden()


def test_a_phone_shows_number_keys_where_they_suffice(tree: Page) -> None:
    """Number keys have no minus: readings below zero get the full keyboard."""
    modes = {
        step: card(tree, step).get_by_label("Reading", exact=True).get_attribute("inputmode")
        for step in ("single", "signed")
    }
    assert modes == {"single": "decimal", "signed": None}


def test_everyone_can_use_it(chromium: Browser, site: Path) -> None:
    """No violation that axe-core knows, for a match, a close call and an error; large targets."""
    context = chromium.new_context(bypass_csp=True, reduced_motion="reduce")
    page = context.new_page()
    page.goto((site / TREE).with_suffix(".html").as_uri())
    for step, typed in (("single", "13.2"), ("signed", "0"), ("over", "volts")):
        card(page, step).get_by_label("Reading", exact=True).fill(typed)
    page.wait_for_selector("#step-over .wrong:not([hidden])")
    page.evaluate(AXE)
    for width in (390, 1280):
        for look in ("light", "dark"):
            page.set_viewport_size({"width": width, "height": 844})
            page.emulate_media(color_scheme=look)
            violations = page.evaluate("async () => (await axe.run(document)).violations")
            assert [(one["id"], one["nodes"][0]["html"]) for one in violations] == []
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    sizes = page.eval_on_selector_all(
        ".readings input, .readings select, .answer a",
        "all => all.map((one) => [one.outerHTML, one.offsetHeight, one.offsetWidth])",
    )
    assert [size for size in sizes if min(size[1:]) < 44] == []
    context.close()


def test_without_javascript_the_cards_are_complete(chromium: Browser, site: Path) -> None:
    """Without JavaScript there's no form; every limit is there and every branch works."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / TREE).with_suffix(".html").as_uri())
    assert not page.locator("form.readings").count()
    assert card(page, "single").locator("a.way").count() == 3
    context.close()
