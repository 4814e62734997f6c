"""Readings typed in on a tree's page: outcomes as in Python, by keyboard, for everybody."""

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
from builder.walk.rows import Table
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
    """Copy the shop, with a decimal comma, and one tree: a check of every kind with readings."""
    made = Path(shutil.copytree(SHOP, tmp_path_factory.mktemp("walk") / "shop"))
    shutil.rmtree(made / "trees")
    (made / TREE).parent.mkdir(parents=True)
    shutil.copy(WALK / "checks.yml", made / TREE)
    settings = made / "site_config" / "shop.yml"
    settings.write_text(settings.read_text("utf-8").replace("mark: point", "mark: comma"), "utf-8")
    return made


@pytest.fixture(scope="module")
def site(shop: Path) -> Path:
    """Build its site."""
    build_shop(shop, shop.parent / "site")
    return shop.parent / "site"


@pytest.fixture(scope="module")
def walk(shop: Path) -> Table:
    """Return the walk table of that tree, as the page gets it: through JSON."""
    library, _ = read_library(shop)
    tree, _ = read_tree(shop, shop / TREE)
    assert tree
    found: Table = json.loads(json.dumps(walk_table(tree, library)))
    return found


@pytest.fixture(scope="module")
def tree(chromium: Browser, site: Path) -> Iterator[Page]:
    """Open the tree from a folder on a phone; any error in the page fails the tests."""
    context = chromium.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    troubles: list[str] = []
    page.on("pageerror", lambda error: troubles.append(str(error)))
    page.on("console", lambda said: troubles.append(said.text) if said.type == "error" else None)
    page.goto((site / TREE).with_suffix(".html").as_uri())
    yield page
    context.close()
    assert not troubles


def card(page: Page, step: str) -> Locator:
    """Return the card of a step."""
    return page.locator(f"#step-{step}")


def test_the_page_gives_the_outcomes_of_the_table(tree: Page) -> None:
    """All cases that Python passes the script passes too, with the table that the page carries."""
    found = tree.evaluate(
        """cases => {
            const table = JSON.parse(document.getElementById("walk-table").content.textContent);
            return cases.map(({ step, typed }) => baytreeFollow.follow(table, step, typed));
        }""",
        CASES,
    )
    for case, one in zip(CASES, found, strict=True):
        assert one == {name: case[name] for name in OUTCOME}, case


def test_computed_readings_have_the_digits_that_were_proved(tree: Page) -> None:
    """The case table of the trade's expressions: twelve digits, or nothing where it cannot be."""
    cases = json.loads((TRADE / "computed.json").read_text("utf-8"))
    found = tree.evaluate(
        """cases => cases.map(({ compiled, values }) => {
            const { read, run, rounded } = baytreeExact;
            const exact = Object.entries(values).map(([name, text]) => [name, read(text)]);
            const value = run(compiled, Object.fromEntries(exact));
            return value && rounded(value);
        })""",
        cases,
    )
    assert found == [case["result"] for case in cases]


def test_page_and_python_agree_on_readings_by_chance(tree: Page, walk: Table) -> None:
    """Readings drawn by chance, near limits and in other units, come to the same outcome."""
    chance = random.Random(7)
    asked = [drawn(chance, walk) for _ in range(300)]
    found = tree.evaluate(
        "([table, all]) => all.map(([step, typed]) => baytreeFollow.follow(table, step, typed))",
        [walk, asked],
    )
    for (step, typed), one in zip(asked, found, strict=True):
        assert one == json.loads(json.dumps(asdict(follow(walk, step, typed)))), (step, typed)


def drawn(chance: random.Random, walk: Table) -> tuple[str, dict[str, str]]:
    """Draw a step and what is typed into its fields."""
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
    """13,4 typed: the result is named and marked, and the link leads to its step."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("13,4")
    answer = step.locator("output")
    expect(answer).to_contain_text("13,4 V: 13.2 to 14.8 V. Go to step")
    assert step.locator(".way.fits").count() == 1
    expect(step.locator(".way.fits")).to_contain_text("match")
    answer.locator("a").click()
    assert tree.evaluate("document.querySelector(':target').id") == "step-signed"


def test_too_close_to_a_limit_is_said_with_the_tool_s_error(tree: Page) -> None:
    """13.2 with a multimeter proves neither side: both are marked, and how far it may be off."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("13.2")
    expect(step.locator("output")).to_contain_text("too close to call")
    expect(step.locator("output")).to_contain_text("Multimeter: ±0,086 V")
    assert step.locator(".way.fits").count() == 2
    assert step.locator("text=possible").count() == 2


def test_a_computed_reading_is_worked_out_from_two_units(tree: Page) -> None:
    """Millivolts typed in volts, amperes beside them: what follows is shown in milliohms."""
    step = card(tree, "chain")
    step.get_by_label("Plus", exact=True).fill("0.5 V")
    expect(step.locator("output")).to_contain_text("Enter: amps")
    step.get_by_label("Amps", exact=True).fill("150")
    expect(step.locator("output")).to_contain_text("half 250 mV, bad 1,667 mΩ: ")


def test_the_unit_beside_a_field_counts_for_a_bare_figure(tree: Page) -> None:
    """0.061 with kΩ chosen is 61 Ω."""
    step = card(tree, "over")
    step.get_by_label("Reading", exact=True).fill("0.061")
    step.get_by_label("Unit of: Reading").select_option("kohm")
    expect(step.locator("output")).to_contain_text("61 Ω: 54 to 66 Ω")


def test_a_phrase_is_chosen_and_a_figure_of_the_maker_is_asked_for(tree: Page) -> None:
    """Phrases are a list; the maker's band comes before the reading."""
    step = card(tree, "phrase")
    step.get_by_label("Lamp", exact=True).select_option("bright")
    expect(step.locator("output")).to_contain_text("bright")
    step = card(tree, "band")
    step.get_by_label("Reading", exact=True).fill("1.2")
    expect(step.locator("output")).to_contain_text("Enter: spec, low; spec, high")
    step.get_by_label("Spec, low", exact=True).fill("1")
    step.get_by_label("Spec, high", exact=True).fill("1.4")
    expect(step.locator("output")).to_contain_text("1,2 kΩ: within the figure")


def test_what_makes_no_sense_is_said_beside_the_field(tree: Page) -> None:
    """A reading outside what the check can read marks no row; what is typed stays text."""
    step = card(tree, "single")
    step.get_by_label("Reading", exact=True).fill("25")
    expect(step.locator(".wrong")).to_contain_text("25 V is outside 0 to 20 V")
    assert step.locator(".way.fits").count() == 0
    step.get_by_label("Reading", exact=True).fill("1 <b>")
    expect(step.locator(".wrong")).to_contain_text("<b> is no unit in use here")
    step.get_by_label("Reading", exact=True).fill("")
    expect(step.locator(".wrong")).to_be_hidden()


def test_a_pad_of_figures_is_asked_for_only_where_it_will_do(tree: Page) -> None:
    """A phone's pad has no minus: readings that go below zero get the whole keyboard."""
    modes = {
        step: card(tree, step).get_by_label("Reading", exact=True).get_attribute("inputmode")
        for step in ("single", "signed")
    }
    assert modes == {"single": "decimal", "signed": None}


def test_everybody_can_use_it(chromium: Browser, site: Path) -> None:
    """No violation that axe-core knows of, decided, too close and wrong; targets for gloves."""
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
            found = page.evaluate("async () => (await axe.run(document)).violations")
            assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []
            assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    sizes = page.eval_on_selector_all(
        ".readings input, .readings select, .answer a",
        "all => all.map((one) => [one.outerHTML, one.offsetHeight, one.offsetWidth])",
    )
    assert [size for size in sizes if min(size[1:]) < 44] == []
    context.close()


def test_without_scripts_the_cards_are_whole(chromium: Browser, site: Path) -> None:
    """With scripts off there is no form; every limit and way can be read and followed."""
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / TREE).with_suffix(".html").as_uri())
    assert not page.locator("form.readings").count()
    assert card(page, "single").locator("a.way").count() == 3
    context.close()
