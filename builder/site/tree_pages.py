"""The pages and the prints of the trees: only those whose inputs changed are made again.

In: the page cache, the library, a function that reads one tree. Out: pages and PDFs in the cache.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import partial

from builder.cache.digest import digest
from builder.cores.progress import Progress, counted, no_progress
from builder.cores.spread import on_all_cores
from builder.model.library import Library
from builder.model.summary import TreeSummary
from builder.model.tree import Status, Tree
from builder.pages import addresses
from builder.pages.analysis import analyze_tree
from builder.pages.closed_jobs import closed_jobs_of
from builder.pages.page import Page, TreePrint
from builder.pages.related import related_trees
from builder.pages.tree import tree_page
from builder.pages.walk_scripts import tree_script, walk_path
from builder.prints.sheets import SHEETS, PrintRequest, SheetKind
from builder.site.page_cache import PageCache, put_page, reuse_page

PORTION = 4  # pages that a process gets at a time; with its sheets, one alone takes long enough
OFFERED = tuple(kind for kind in SHEETS.values() if kind.link)  # on the pages of trees
Related = tuple[TreeSummary, ...]  # the trees that a page lists as related


@dataclass(frozen=True, slots=True)
class TreeInput:
    """What the pages of trees are made from."""

    library: Library
    read_tree: Callable[[str], Tree]  # by ID; trees are read one at a time and not kept
    prints: bool

    @property
    def links(self) -> list[TreePrint]:
        """The sheets that a page offers."""
        return [TreePrint(kind.link, kind.suffix) for kind in self.offered]

    @property
    def offered(self) -> tuple[SheetKind, ...]:
        """The sheets that the site prints."""
        return OFFERED if self.prints else ()


def printed_sheets(trees: TreeInput, tree: Tree) -> dict[str, bytes]:
    """Print what the site offers of a tree or a procedure; return each sheet by its address."""
    return {
        addresses.print_path(tree.id, kind.suffix): pdf
        for kind in trees.offered
        for _, pdf in kind.print(tree, trees.library, PrintRequest())
    }


def put_trees(pages: PageCache, trees: TreeInput, progress: Progress = no_progress) -> None:
    """Put the page and the prints of every tree that isn't retired into the cache."""
    library = trees.library
    related_ids = related_trees(library.trees.values())
    stale: list[tuple[TreeSummary, Related]] = []
    for id_, summary in library.trees.items():
        if summary.status is Status.RETIRED:
            continue
        related = tuple(library.trees[other] for other in related_ids[id_])
        key = _page_key(library, summary, related, trees.links)
        if not reuse_page(pages, addresses.tree_path(id_), key):
            stale.append((summary, related))
    portion = 1 if trees.prints else PORTION
    results = on_all_cores(partial(_render_tree, trees), stale, portion)
    what = "Making pages and sheets of trees" if trees.prints else "Making pages of trees"
    for page, key, files in counted(results, progress, what, len(stale)):
        put_page(pages, page, key, files)


def _render_tree(
    trees: TreeInput, stale: tuple[TreeSummary, Related]
) -> tuple[Page, str, dict[str, bytes]]:
    """Return the page of a tree, its key, and by address its prints and walk's table."""
    summary, related = stale
    library, tree = trees.library, trees.read_tree(summary.id)
    # The file may have been saved after it was summarized: the key is that of the tree shown.
    key = _page_key(library, replace(summary, revision=tree.revision), related, trees.links)
    page, script = tree_with_script(trees, tree, related)
    return page, key, {walk_path(tree.id): script, **printed_sheets(trees, tree)}


def tree_with_script(trees: TreeInput, tree: Tree, related: Related) -> tuple[Page, bytes]:
    """Return the page of a tree, and the script with the table of its walk."""
    analysis = analyze_tree(tree, trees.library)
    page = tree_page(tree, trees.library, analysis, related, trees.links)
    return page, tree_script(tree, trees.library, analysis).encode()


def _page_key(
    library: Library, summary: TreeSummary, related: Related, prints: list[TreePrint]
) -> str:
    """Hash what a tree's page shows; of other trees that is titles and numbers of steps."""
    others = sorted({handoff.tree for handoff in summary.handoffs} & library.trees.keys())
    titles = [(id_, library.trees[id_].title) for id_ in others]
    entered = [f"{handoff.tree}#{handoff.step}" for handoff in summary.handoffs if handoff.step]
    numbers = [library.entry_numbers.get(entry) for entry in entered]
    related_titles = [(tree.id, tree.title) for tree in related]
    jobs = closed_jobs_of(library, summary.id)
    return digest(summary.revision, titles, numbers, related_titles, prints, jobs)
