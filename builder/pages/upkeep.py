"""What the foreman watches: reviews, drafts, DTCs without a tree, closed jobs.

In: the catalog of trees. Out: one `Page`. The page holds plain dates and its script marks the old
ones, so that the same files give the same page on any day.
"""

from builder.model.summary import TreeSummary
from builder.model.tree import Status
from builder.pages.closed_jobs import closed_jobs
from builder.pages.codes import code_views
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog


def upkeep_page(catalog: TreeCatalog) -> Page:
    """Write the foreman's page."""
    library = catalog.library
    ready = [tree for tree in catalog.trees if tree.status is Status.READY]
    body = render(
        "upkeep.html",
        "upkeep",
        good_for=library.shop.review_months,
        reviews=sorted(ready, key=_reviewed),
        drafts=[tree for tree in catalog.trees if tree.status is Status.DRAFT],
        retired=catalog.retired,
        library=library,
        codes_without_tree=[code for code in code_views(catalog) if not code.trees],
        jobs=closed_jobs(library),
    )
    return Page("upkeep", "Review status", body)


def _reviewed(tree: TreeSummary) -> tuple[str, str]:
    return (str(tree.reviewed.date) if tree.reviewed else "", tree.id)
