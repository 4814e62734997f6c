"""Every page of the site but those of the trees.

In: the library. Out: the pages, one by one. A new kind of page gets its line here.
"""

from collections.abc import Iterator

from builder.model.library import Library
from builder.pages.home import home_page
from builder.pages.page import Page


def shop_pages(library: Library) -> Iterator[Page]:
    """Yield every page that is made from the library alone."""
    yield home_page(library)
