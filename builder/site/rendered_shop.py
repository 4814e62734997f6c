"""The pages of one state of a shop, each rendered when somebody looks at it, and kept.

In: the library, and a function that reads one tree. Out: pages and the tables of walks. Every page
is of the same state, whatever has been saved since; requests come on several threads.
"""

import threading
from collections.abc import Callable, Iterator

from markupsafe import Markup

from builder.model.library import Library
from builder.model.tree import Status, Tree
from builder.pages import addresses
from builder.pages.contents import shop_pages
from builder.pages.page import Page
from builder.pages.related import related_trees
from builder.pages.walk_scripts import WALK_SCRIPTS
from builder.site.page_frames import FrameForm, frame_form
from builder.site.procedure_pages import page_of_procedure
from builder.site.tree_pages import TreeInput, tree_with_script


class RenderedShop:
    """The pages of a shop, as far as they were asked for."""

    def __init__(self, library: Library, read_tree: Callable[[str], Tree]) -> None:
        """Take a library with every summary loaded; nothing is rendered yet."""
        self.library = library
        self._trees = TreeInput(library, read_tree, prints=False)
        self._live = {addresses.tree_path(id_): id_ for id_, listing in library.listings.items()
                      if listing.status is not Status.RETIRED}  # fmt: skip
        self._procedures = {addresses.procedure_path(name): one
                            for name, one in library.procedures.items()}  # fmt: skip
        self._pages: dict[str, Page | None] = {}
        self._scripts: dict[str, bytes] = {}
        self._shop_pages = shop_pages(library)  # rendered one after another
        self._lock = threading.RLock()

    def page(self, path: str) -> Page | None:
        """Return the page of an address; None where there is none."""
        with self._lock:
            if path not in self._pages:
                self._pages[path] = self._rendered(path)
            return self._pages[path]

    def script(self, id_: str) -> bytes | None:
        """Return the table of a tree's walk; None where there is no such tree."""
        self.page(addresses.tree_path(id_))
        return self._scripts.get(id_)

    def paths(self) -> Iterator[str]:
        """Yield the address of every page."""
        yield from (*self._live, *self._procedures)
        with self._lock:
            yield from [page.path for page in self._all_shop_pages()]

    def live_trees(self) -> Iterator[str]:
        """Yield the IDs of the trees that aren't retired."""
        yield from self._live.values()

    def likely_frames(self) -> Iterator[FrameForm]:
        """Yield nearly all forms of frames, so that the engine runs once for all of them."""
        with self._lock:
            yield from map(frame_form, self._all_shop_pages())
        for path in self._live:
            yield frame_form(Page(path, "", Markup(), "symptoms", WALK_SCRIPTS))
        for path in self._procedures:
            yield frame_form(Page(path, "", Markup(), "what it returns"))

    def _rendered(self, path: str) -> Page | None:
        if path in self._live:
            return self._tree_page(self._live[path])
        if path in self._procedures:
            return page_of_procedure(self._trees, self._procedures[path])
        return self._shop_page(path)

    def _tree_page(self, id_: str) -> Page:
        related = related_trees(self.library.trees.values())[id_]
        others = tuple(self.library.trees[other] for other in related)
        tree = self._trees.read_tree(id_)
        page, self._scripts[id_] = tree_with_script(self._trees, tree, others)
        return page

    def _shop_page(self, path: str) -> Page | None:
        """Render pages that need nothing but the library, up to the one that is wanted."""
        for page in self._shop_pages:
            self._pages[page.path] = page
            if page.path == path:
                return page
        return None

    def _all_shop_pages(self) -> list[Page]:
        self._shop_page("")
        others = self._live.keys() | self._procedures.keys()
        return [page for path, page in self._pages.items() if page and path not in others]
