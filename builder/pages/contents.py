"""Every page of the site but those of trees, of procedures, and of a build with mistakes.

In: the library. Out: the pages, one by one. Add a new kind of page here.
"""

from collections.abc import Iterator

from builder.model.library import Library
from builder.pages.about import about_pages
from builder.pages.calculators import calculators_page
from builder.pages.codes import code_pages
from builder.pages.glossary import glossary_page
from builder.pages.home import home_page
from builder.pages.how_tos import how_to_pages
from builder.pages.lamps import lamp_pages
from builder.pages.modules import module_pages
from builder.pages.occasions import occasion_pages
from builder.pages.page import Page
from builder.pages.procedures import procedures_page
from builder.pages.retired import retired_page
from builder.pages.rules import rule_pages
from builder.pages.systems import system_pages
from builder.pages.tools import tools_page
from builder.pages.tree_catalog import catalog_trees
from builder.pages.upkeep import upkeep_page
from builder.pages.vehicles import vehicle_pages
from builder.pages.words import words_page


def shop_pages(library: Library) -> Iterator[Page]:
    """Yield every page that needs nothing but the library."""
    catalog = catalog_trees(library)
    yield home_page(catalog)
    yield from system_pages(catalog)
    yield from lamp_pages(catalog)
    yield from occasion_pages(catalog)
    yield from vehicle_pages(catalog)
    yield from module_pages(catalog)
    yield from how_to_pages(catalog)
    yield procedures_page(catalog)
    yield tools_page(catalog)
    yield calculators_page(library)
    yield glossary_page(library)
    yield words_page()
    yield upkeep_page(catalog)
    yield from about_pages(library)
    for tree in catalog.retired:
        yield retired_page(tree, library)
    yield from code_pages(catalog)  # these are many, and seldom what somebody waits for
    yield from rule_pages()
