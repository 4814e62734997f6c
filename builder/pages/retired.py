"""The page of a tree that has been replaced: its old address goes on answering.

In: the tree's summary, the library. Out: `Page`.
"""

from builder.model.library import Library
from builder.model.summary import Summary
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render


def retired_page(tree: Summary, library: Library) -> Page:
    """Write the page that leads on to what replaced a tree."""
    path = addresses.tree(tree.id)
    instead = library.trees.get(tree.replaced_by or "")
    body = render("retired.html", path, tree=tree, instead=instead)
    return Page(path, str(tree.title), body)
