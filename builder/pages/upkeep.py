"""What the foreman keeps an eye on: reviews, drafts, codes without a tree, how jobs ended.

In: the catalogue. Out: one `Page`. Dates are given as they are; the page's script says which are
too old, so that the same files give the same page on any day.
"""

from builder.model.summary import Summary
from builder.model.tree import Status
from builder.pages.catalogue import Catalogue
from builder.pages.closed_jobs import closed_jobs
from builder.pages.codes import code_views
from builder.pages.page import Page
from builder.pages.render import render


def upkeep_page(catalogue: Catalogue) -> Page:
    """Write the foreman's page."""
    library = catalogue.library
    ready = [tree for tree in catalogue.trees if tree.status is Status.READY]
    body = render(
        "upkeep.html",
        "upkeep",
        good_for=library.shop.review_months,
        reviews=sorted(ready, key=_reviewed),
        drafts=[tree for tree in catalogue.trees if tree.status is Status.DRAFT],
        retired=catalogue.retired,
        library=library,
        bare=[code for code in code_views(catalogue) if not code.trees],
        jobs=closed_jobs(library),
    )
    return Page("upkeep", "Upkeep", body)


def _reviewed(tree: Summary) -> tuple[str, str]:
    return (str(tree.reviewed.date) if tree.reviewed else "", tree.id)
