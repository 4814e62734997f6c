"""Every page of the site but those of the trees.

In: the library. Out: the pages, one by one. A new kind of page gets its line here.
"""

from collections.abc import Iterator

from builder.model.library import Library
from builder.pages.about import about_pages
from builder.pages.calculators import calculators_page
from builder.pages.catalogue import catalogue_of
from builder.pages.codes import code_pages
from builder.pages.during import during_pages
from builder.pages.glossary import glossary_page
from builder.pages.home import home_page
from builder.pages.how_tos import how_to_pages
from builder.pages.lamps import lamp_pages
from builder.pages.modules import module_pages
from builder.pages.page import Page
from builder.pages.retired import retired_page
from builder.pages.rules import rule_pages
from builder.pages.systems import system_pages
from builder.pages.tools import tools_page
from builder.pages.upkeep import upkeep_page
from builder.pages.vehicles import vehicle_pages


def shop_pages(library: Library) -> Iterator[Page]:
    """Yield every page that is made from the library alone."""
    catalogue = catalogue_of(library)
    yield home_page(catalogue)
    yield from system_pages(catalogue)
    yield from lamp_pages(catalogue)
    yield from code_pages(catalogue)
    yield from during_pages(catalogue)
    yield from vehicle_pages(catalogue)
    yield from module_pages(catalogue)
    yield from how_to_pages(catalogue)
    yield tools_page(catalogue)
    yield calculators_page(library)
    yield glossary_page(library)
    yield upkeep_page(catalogue)
    yield from rule_pages()
    yield from about_pages(library)
    for tree in catalogue.retired:
        yield retired_page(tree, library)
