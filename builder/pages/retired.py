"""The page of a retired tree: its address keeps working.

In: the tree's summary, the library. Out: `Page`.
"""

from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render


def retired_page(tree: TreeSummary, library: Library) -> Page:
    """Write the page that links to the tree's replacement."""
    path = addresses.tree_path(tree.id)
    replacement = library.trees.get(tree.replaced_by or "")
    body = render("retired.html", path, tree=tree, replacement=replacement)
    return Page(path, str(tree.title), body)
