"""The pages and the prints of procedures: only those whose inputs changed are made again.

In: the page cache, the library, whether there are prints. Out: pages and PDFs in the cache.
"""

from functools import partial

from builder.cache.digest import digest
from builder.cores.spread import on_all_cores
from builder.model.procedures import Procedure
from builder.pages import addresses
from builder.pages.analysis import analyze_tree
from builder.pages.page import Page
from builder.pages.procedures import procedure_page, trees_that_run
from builder.site.page_cache import PageCache, put_page, reuse_page
from builder.site.tree_pages import TreeInput, printed_sheets


def put_procedures(pages: PageCache, trees: TreeInput) -> None:
    """Put the page and the prints of every procedure into the cache."""
    stale: list[tuple[Procedure, str]] = []
    for procedure in trees.library.procedures.values():
        key = _page_key(trees, procedure)
        if not reuse_page(pages, addresses.procedure_path(procedure.name), key):
            stale.append((procedure, key))
    for page, key, files in on_all_cores(partial(_rendered, trees), stale):
        put_page(pages, page, key, files)


def _rendered(trees: TreeInput, stale: tuple[Procedure, str]) -> tuple[Page, str, dict[str, bytes]]:
    procedure, key = stale
    tree = trees.read_tree(procedure.tree.id)
    return page_of_procedure(trees, procedure), key, printed_sheets(trees, tree)


def page_of_procedure(trees: TreeInput, procedure: Procedure) -> Page:
    """Return the page of a procedure."""
    tree = trees.read_tree(procedure.tree.id)
    return procedure_page(procedure, trees.library, analyze_tree(tree, trees.library), trees.links)


def _page_key(trees: TreeInput, procedure: Procedure) -> str:
    """Hash what a procedure's page shows; the knowledge is in the key of every page."""
    running = [(tree.id, tree.title) for tree in trees_that_run(procedure, trees.library)]
    return digest(procedure.tree.revision, running, trees.links)
