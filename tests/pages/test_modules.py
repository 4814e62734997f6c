"""Module setup: everything in a record is on its page, and all modules are in one table."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from markupsafe import escape

from builder.check.unchecked_library import read_library
from builder.model.library import Library
from builder.model.module_record import Module
from builder.pages.modules import module_pages
from builder.pages.page import Page
from builder.pages.tree_catalog import catalog_trees
from builder.wording.labels import DRIVE_BEFORE_TEXTS, SAFETY_TEXTS, SETUP_LABELS, USED_PART_TEXTS
from builder.wording.value_text import money_text, number_text


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the library of the tests' shop."""
    return read_library(Path(__file__).parents[1] / "shop")[0]


@pytest.fixture(scope="module")
def pages(library: Library) -> dict[str, Page]:
    """Return the pages of module setup by their path."""
    return {page.path: page for page in module_pages(catalog_trees(library))}


def texts_of(module: Module, library: Library) -> Iterator[str]:
    """Yield everything in a record, as its page shows it."""
    yield from (module.name, *module.also_called, *module.write_down, *module.prove_first)
    yield USED_PART_TEXTS[module.used_part]
    yield DRIVE_BEFORE_TEXTS[module.drive_before_set_up]
    yield SAFETY_TEXTS[module.safety]
    for text in (module.released_by, module.drive_why, module.network, module.if_it_fails):
        yield text or ""
    for step in module.set_up:
        yield SETUP_LABELS[step.verb]
        yield (f"{number_text(step.minutes)} min" if step.minutes is not None else step.needed)
        for need in step.needs:
            yield str(library.tools[need].name) if need in library.tools else need
        for hazard in step.hazards:
            record = library.hazards[hazard]
            yield from (record.hazard, record.harm, record.avoid)
    for message, kind in module.refusals.items():
        yield from (message, kind)
    yield from (f"{number_text(hours)} h" for hours in module.hours.values())
    yield money_text(module.price, library.shop) if module.price else ""
    yield from map(str, module.source.values())


def test_a_page_shows_everything_in_its_record(library: Library, pages: dict[str, Page]) -> None:
    """Nothing in a record is lost, and the setup steps are in the order of work."""
    assert library.modules
    for module in library.modules.values():
        page = pages[f"modules/{module.id}"]
        body = f"{page.title} {page.body}".casefold()
        missing = [
            text for text in texts_of(module, library) if str(escape(text)).casefold() not in body
        ]
        assert missing == [], module.id
        places = [body.index(f'scope="row">{SETUP_LABELS[step.verb]}'.casefold())
                  for step in module.set_up]  # fmt: skip
        assert places == sorted(places)


def test_the_table_of_all_modules_has_no_empty_cell(
    library: Library, pages: dict[str, Page]
) -> None:
    """Each module has a cell for each of the four setup steps, for a used part and for driving."""
    body = str(pages["modules/index"].body)
    rows = body.split('<tr role="row">')[2:]
    assert len(rows) == len(library.modules)
    for row in rows:
        cells = re.findall(r'role="cell" data-head="[^"]+">([^<]*)<', row)
        assert len(cells) == 6
        assert all(cells)


def test_a_refusal_of_the_standard_says_what_to_do(pages: dict[str, Page]) -> None:
    """A name of ISO 14229-1 gets its number, and its meaning decides what to do."""
    body = str(pages["modules/steering-unit"].body)
    assert "conditions not correct (22)" in body
    assert "required time delay not expired (37)" in body
    assert "Locked after wrong tries: leave the key on, touch nothing, wait the stated time" in body
    # For a message that the standard doesn't know, the kind in the record decides.
    assert "Correct the supply voltage at the battery terminals" in body


def test_the_page_defers_to_the_maker(pages: dict[str, Page]) -> None:
    """Every page of module setup says what comes first."""
    assert pages
    for page in pages.values():
        assert "service information, local codes, and licensing rules first" in page.body
