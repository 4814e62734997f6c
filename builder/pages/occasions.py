"""Occasions: what the vehicle or the driver was doing when the symptom showed.

In: the catalog of trees. Out: `Page`s, for techs who know neither a warning light nor a DTC. Trees
list their occasions under `during`.
"""

from collections.abc import Iterator

from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog


def occasion_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of occasions and the page of each."""
    counts = {what: len(trees) for what, trees in catalog.by_occasion.items()}
    body = render("occasions.html", "during/index", counts=counts)
    yield Page("during/index", "When it happens", body)
    for what, trees in catalog.by_occasion.items():
        path = addresses.occasion_path(what)
        body = render("occasion.html", path, trees=trees)
        summary = f"Symptoms while {what}"
        yield Page(path, f"While {what}", body, summary)
