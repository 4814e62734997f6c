"""What the vehicle or the driver was doing: a way in for who knows neither lamp nor code.

In: the catalogue. Out: `Page`s.
"""

from collections.abc import Iterator

from builder.pages import addresses
from builder.pages.catalogue import Catalogue
from builder.pages.page import Page
from builder.pages.render import render
from builder.wording import phrases


def during_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the list of what was going on and the page of each."""
    counts = {what: len(trees) for what, trees in catalogue.by_during.items()}
    body = render("during.html", "during/index", counts=counts)
    yield Page("during/index", "When it shows", body)
    for what, trees in catalogue.by_during.items():
        path = addresses.during(what)
        body = render("during_one.html", path, trees=trees)
        yield Page(
            path, f"While {what}", body, summary=f"What shows while {phrases.sentence(what)}"
        )
