"""The pages other than those of trees, from a small library."""

import re
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from html import unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from builder.check.unchecked_library import read_library
from builder.model.knowledge import CodeEntry, FailureType, Lamp, Term
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.model.text import NOWHERE, Text
from builder.model.tree import Scope, Signed, Status, Symptom
from builder.pages.closed_jobs import closed_jobs, closed_jobs_of, rounded_mileage
from builder.pages.codes import code_pages
from builder.pages.contents import shop_pages
from builder.pages.findings import broken_page
from builder.pages.glossary import glossary_page
from builder.pages.lamps import lamp_drawing, lamp_pages
from builder.pages.page import Page
from builder.pages.related import related_trees
from builder.pages.retired import retired_page
from builder.pages.tree_catalog import TreeCatalog, catalog_trees
from builder.pages.upkeep import upkeep_page
from builder.pages.vehicles import vehicle_pages
from builder.reader.source import mistake
from builder.wording.value_text import grouped_number

from .test_tree import SHOP


def summary(id_: str, title: str, symptom: Symptom, **more: object) -> TreeSummary:
    """Build the summary of a tree."""
    plain = TreeSummary(
        id=id_, file=f"trees/{id_}.yml", at=NOWHERE, title=Text(title), status=Status.READY,
        system=Text(id_.split("/")[0]), symptom=symptom, applies_to=(), steps=("first",),
        handoffs=(), how_tos=frozenset(), tools=frozenset(), modules=frozenset(),
        written=None, reviewed=Signed(Text("M. Lind"), Text("2026-09-01")), replaced_by=None,
        revision="1",
    )  # fmt: skip
    return replace(plain, **more)


@pytest.fixture(scope="module")
def library() -> Library:
    """Build a small library: three trees, some DTCs, a warning light."""
    shop = read_library(SHOP)[0].shop
    low = Symptom((Text("dim lamps"),), (Text("charging"),), (Text("P0562-16"), Text("P1234")))
    high = Symptom((Text("bulbs burn"),), (Text("charging"),), (Text("P0562"),))
    tern = (Scope(NOWHERE, Text("Corvane"), Text("Tern"), (2017, 2022)),)
    trees = (
        summary("charging/low", "Charges too little", low, applies_to=tern),
        summary("charging/high", "Charges too much", high, status=Status.DRAFT),
        summary("charging/old", "Old tree", low, status=Status.RETIRED, replaced_by="charging/low"),
    )
    codes = {"P0562": CodeEntry(Text("P0562"), Text("Voltage low")),
             "U0100": CodeEntry(Text("U0100"), Text("Lost communication with ECM"))}  # fmt: skip
    return Library(
        shop,
        codes=codes,
        lamps={"charging": Lamp(Text("charging"), Text("Charging lamp"), None, Text("red"))},
        failure_types={"16": FailureType(Text("16"), Text("Below its limit"))},
        trees={tree.id: tree for tree in trees},
    )


@pytest.fixture(scope="module")
def catalog(library: Library) -> TreeCatalog:
    """Return the catalog of its trees."""
    return catalog_trees(library)


@pytest.fixture(scope="module")
def page(catalog: TreeCatalog) -> Callable[[str], str]:
    """Return a function that returns the text of a page by its path."""
    pages = {one.path: one for one in shop_pages(catalog.library)}
    return lambda path: text_of(pages[path])


def text_of(page: Page) -> str:
    """Return what a reader sees."""
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page.body)).split())


def test_generic_and_maker_specific_codes_differ(page: Callable[[str], str]) -> None:
    """SAE J2012 and ISO 15031-6: the second character says who defines the DTC."""
    assert "Generic: means the same for every vehicle maker" in page("codes/P0562")
    assert "Maker-specific: look it up" in page("codes/P1234")


def test_a_code_shows_the_meaning_of_its_failure_type(page: Callable[[str], str]) -> None:
    """The failure type byte has the shop's own text, next to the trees for the DTC."""
    assert "P0562-16 Voltage low: below its limit" in page("codes/P0562")
    assert "Charges too little" in page("codes/P0562")


def test_a_code_without_a_tree_says_so(page: Callable[[str], str]) -> None:
    """The page and the review status both show that the tree is missing."""
    assert "No tree yet" in page("codes/U0100")
    assert "U0100 Lost communication with ECM no tree yet" in page("codes/index")
    assert "U0100" in page("upkeep")


def test_a_retired_tree_leaves_the_lists_and_keeps_its_page(library: Library) -> None:
    """It's in no list; its address links to its replacement."""
    for page in (*code_pages(catalog_trees(library)), *lamp_pages(catalog_trees(library))):
        assert "Old tree" not in page.body
    old = retired_page(library.trees["charging/old"], library)
    assert 'href="../../trees/charging/low.html"' in old.body
    assert 'id="step-first"' in old.body


def test_a_vehicle_lists_its_own_trees_and_counts_the_rest(library: Library) -> None:
    """Trees for any vehicle come after its own, counted and folded away."""
    tern = {"tern": read_library(SHOP)[0].vehicles["tern"]}
    pages = {one.path: one for one in vehicle_pages(catalog_trees(replace(library, vehicles=tern)))}
    text = text_of(pages["vehicles/tern"])
    assert "Charges too little" in text
    assert "1 more for any vehicle" in text


def test_a_draft_is_marked_and_listed_for_the_foreman(page: Callable[[str], str]) -> None:
    """A draft is easy to find and clearly not reviewed."""
    assert "Charges too much draft" in page("lamps/charging")
    assert "Drafts Charges too much" in page("upkeep")


def test_the_review_status_holds_dates_only(catalog: TreeCatalog) -> None:
    """The page's script marks what's overdue, so the bytes don't depend on the day."""
    assert 'datetime="2026-09-01" data-good-for="24"' in upkeep_page(catalog).body


def test_a_closed_job_gives_away_neither_day_nor_mileage(library: Library) -> None:
    """A page shows the month and a rounded mileage, too little to identify a vehicle."""
    whole, _ = read_library(SHOP)
    case = next(one for one in whole.cases.values() if "km" in one.vehicle)
    case = replace(case, vehicle=dict(case.vehicle) | {"km": Text("171400")})
    one_case = replace(library, cases={case.id: case})
    for page in shop_pages(one_case):
        assert case.closed not in page.body
        assert not re.search("171.?400", page.body)
    (job,) = closed_jobs(one_case)
    assert job.month == case.closed[:7]
    assert job.vehicle.endswith(f", about {grouped_number(Decimal(170_000))} km")
    text = text_of(upkeep_page(catalog_trees(one_case)))
    assert " ".join(f"{job.month} {job.vehicle}".split()) in text


@given(st.decimals(0, 9_999_999))
def test_a_rounded_mileage_is_never_finer_than_5000(km: Decimal) -> None:
    """Mileages are shown in steps of 5,000 km, at most one step off."""
    shown = int("0" + re.sub(r"\D", "", rounded_mileage(str(km)).replace("under", "")))
    assert shown % 5000 == 0
    assert abs(shown - km) <= 5000


@pytest.mark.parametrize("text", ["", "a lot", "NaN", "-3", "1e99", "171 400"])
def test_a_mileage_that_isnt_a_number_is_left_out(text: str) -> None:
    """Free text in `km` could hold anything, so it never reaches a page."""
    assert rounded_mileage(text) == ""


def test_the_four_words_come_first_in_the_glossary(library: Library) -> None:
    """People mix them up, so they're above the other terms."""
    ids = ("programming", "configuration", "initialization", "security-learning", "abs")
    terms = {word: Term(Text(word), Text(word), Text(f"meaning of {word}")) for word in ids}
    text = text_of(glossary_page(replace(library, glossary=terms)))
    assert text.index("meaning of security-learning") < text.index("meaning of abs")


def test_related_trees_share_codes_lamps_or_rare_words(library: Library) -> None:
    """Trees for the same DTC or light link to each other; no tree links to a retired one."""
    near = related_trees(library.trees.values())
    assert near["charging/low"] == ("charging/high",)
    assert "charging/old" not in near


def test_a_lamp_without_a_drawing_is_drawn_plainly() -> None:
    """A shop may name lights without a drawing; the color is one of a fixed list."""
    odd = lamp_drawing(Lamp(Text("odd"), Text("Odd lamp"), None, Text('red" onload="x')))
    assert 'class="lamp lamp-red"' in odd
    assert "onload" not in odd


def test_a_broken_page_has_its_findings_above_what_it_was() -> None:
    """The author sees the line, what's wrong, why it matters, what to write; then the old page."""
    finding = mistake("tab", "trees/a/b.yml", "this is a tab", "it hides", "write blanks")
    text = text_of(broken_page("trees/a/b", [finding], lambda at: f"{at.line} | <tab>", None))
    assert "trees/a/b.yml:1:1" in text
    assert "This is a tab. 1 | <tab> It hides. Instead: write blanks" in text
    sound = Page("trees/a/b", "Horn", Markup("<p>Steps</p>"), "horn", ("walk.js",))
    broken = broken_page("trees/a/b", [finding], lambda _: "", sound)
    assert (broken.title, broken.summary, broken.scripts) == ("Horn", "horn", ("walk.js",))
    assert text_of(broken).index("this is a tab".capitalize()) < text_of(broken).index("Steps")


def test_a_tree_s_page_lists_its_closed_jobs() -> None:
    """Those that began or ended in it, and no other."""
    library, _ = read_library(SHOP)
    jobs = closed_jobs_of(library, "network/module-silent")
    assert [(job.id, job.fix, job.month) for job in jobs] == [
        ("2026-05-d3d8fe5d", "radio", "2026-05")
    ]
    assert closed_jobs_of(library, "horn/silent") == ()
