"""The first page: the search, and the ways in without typing.

In: the library. Out: `Page`.
"""

from builder.model.library import Library
from builder.pages.page import Page
from builder.pages.render import render


def home_page(library: Library) -> Page:
    """Write the first page."""
    body = render("home.html", "index", library=library)
    return Page("index", str(library.shop.name), body, scripts=("search.js",))
