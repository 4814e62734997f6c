"""The recipe for a new page holds: a forgotten step fails here and names the file to edit."""

import ast
import inspect
import re
from collections.abc import Iterator
from pathlib import Path
from posixpath import dirname, join, normpath
from typing import Any
from urllib.parse import unquote, urlsplit

import jinja2
import pytest

from builder.check.filled_tree import tree_of
from builder.check.unchecked_library import read_library
from builder.model.tree import Status
from builder.pages import addresses
from builder.pages.about import FURTHER_PAGES
from builder.pages.analysis import analyze_tree
from builder.pages.contents import shop_pages
from builder.pages.findings import findings_page
from builder.pages.page import Page
from builder.pages.procedures import procedure_page
from builder.pages.render import TEMPLATES
from builder.pages.tree import tree_page
from builder.site.engine import HEADER_LINKS

TESTS = Path(__file__).parents[1]
PAGES, SITE = (TESTS.parent / "builder" / room for room in ("pages", "site"))
NO_PAGE = {"print_path"}  # the address of a PDF


def pages_of_the_shop() -> Iterator[Page]:
    """Yield every page of the tests' shop, and the list of findings that only `serve` shows."""
    library, _ = read_library(TESTS / "shop")
    yield from shop_pages(library)
    for id_, summary in library.trees.items():
        if summary.status is not Status.RETIRED:
            tree = tree_of(TESTS / "shop", library, id_)
            yield tree_page(tree, library, analyze_tree(tree, library))
    for procedure in library.procedures.values():
        tree = tree_of(TESTS / "shop", library, procedure.tree.id)
        yield procedure_page(procedure, library, analyze_tree(tree, library))
    yield findings_page((), lambda _: "")


@pytest.fixture(scope="module")
def pages() -> dict[str, tuple[Page, str]]:
    """Return the pages by their path, each with the name of its template."""
    rendered: list[str] = []
    get_template = jinja2.Environment.get_template

    def recorded(self: Any, name: Any, parent: Any = None, globals: Any = None) -> jinja2.Template:
        if parent is None:  # not a template that another one imports
            rendered.append(name)
        return get_template(self, name, parent, globals)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(jinja2.Environment, "get_template", recorded)
        made = {page.path: (page, rendered[-1]) for page in pages_of_the_shop()}
    assert made
    return made


def names_in(*files: Path) -> set[str]:
    """Return every name that some modules use."""
    trees = [ast.parse(file.read_text("utf-8")) for file in files]
    return {node.id for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Name)}


def is_renderer(function: ast.FunctionDef) -> bool:
    """Return whether a function is public and returns pages."""
    returns = ast.unparse(function.returns) if function.returns else ""
    return not function.name.startswith("_") and bool(re.search(r"\bPage\b", returns))


def test_every_renderer_is_listed() -> None:
    """A public function of pages/ that returns pages is called for the site."""
    called = names_in(PAGES / "contents.py", *SITE.glob("*.py"))
    renderers = 0
    for file in sorted(PAGES.glob("*.py")):
        for node in ast.parse(file.read_text("utf-8")).body:
            if isinstance(node, ast.FunctionDef) and is_renderer(node):
                assert node.name in called, (
                    f"nothing calls `{node.name}` of builder/pages/{file.name}:"
                    " call it in builder/pages/contents.py"
                )
                renderers += 1
    assert renderers


def test_every_template_is_rendered() -> None:
    """A template belongs to a page, or is imported by a template that does."""
    code = "".join(file.read_text("utf-8") for file in PAGES.glob("*.py"))
    markup = "".join(file.read_text("utf-8") for file in TEMPLATES.glob("*.html"))
    used = set(re.findall(r'"([\w-]+\.html)"', code))
    assert used
    used |= set(re.findall(r'{%-? *(?:from|include|extends|import) "([\w-]+\.html)"', markup))
    for file in sorted(TEMPLATES.glob("*.html")):
        assert file.name in used, (
            f"no page uses builder/pages/templates/{file.name}:"
            " render it in a module of builder/pages/, or delete it"
        )


def test_every_address_has_a_page(pages: dict[str, tuple[Page, str]]) -> None:
    """Each function of addresses.py gives the address of pages that the tests' shop has."""
    held = 0
    for name, address in inspect.getmembers(addresses, inspect.isfunction):
        if name.endswith("_path") and name not in NO_PAGE:
            held += 1
            folder = address("x").removesuffix("x")
            assert any(path.startswith(folder) for path in pages), (
                f"no page is at `{name}` of builder/pages/addresses.py: call its renderer in"
                " builder/pages/contents.py, and let tests/shop have such a page"
            )
    assert held


def test_every_link_has_its_page(pages: dict[str, tuple[Page, str]]) -> None:
    """No page, no header and no list names an address at which there is nothing."""
    for path, (page, template) in pages.items():
        for target in links_of(page):
            assert target in pages, (
                f"{path} links to {target}, which isn't a page: call its renderer in"
                f" builder/pages/contents.py, or change builder/pages/templates/{template}"
            )
    for path, name, _ in FURTHER_PAGES:
        assert path in pages, f"FURTHER_PAGES in builder/pages/about.py: {name} has no page"
    for name, href, _ in HEADER_LINKS:
        assert href.removesuffix(".html") in pages, (
            f"HEADER_LINKS in builder/site/engine.py: {name} has no page"
        )


def test_every_page_can_be_reached(pages: dict[str, tuple[Page, str]]) -> None:
    """From the home page and the header, links lead to every page."""
    waiting = ["index", *(href.removesuffix(".html") for _, href, _ in HEADER_LINKS)]
    reached = {"findings"}  # `baytree serve` links to it from its note
    while waiting:
        path = waiting.pop()
        if path not in reached:
            reached.add(path)
            waiting += links_of(pages[path][0])
    for path in pages:
        assert path in reached, (
            f"no page links to {path}: add it to FURTHER_PAGES in builder/pages/about.py,"
            " or to the list that it belongs to"
        )


def links_of(page: Page) -> list[str]:
    """Return the paths of the pages that a page links to."""
    folder = dirname(page.path)
    hrefs = [urlsplit(href) for href in re.findall(r'href="([^"]+)"', page.body)]
    return [
        normpath(join(folder, unquote(href.path))).removesuffix(".html")
        for href in hrefs
        if not href.scheme and href.path.endswith(".html")
    ]


def test_every_kind_of_page_is_tested_for_access(pages: dict[str, tuple[Page, str]]) -> None:
    """Each template has a page that axe-core checks."""
    text = (TESTS / "site" / "test_access.py").read_text("utf-8")
    kinds: set[str] = set()
    for node in ast.parse(text).body:
        if isinstance(node, ast.Assign) and "KINDS" in ast.unparse(node.targets[0]):
            kinds |= set(ast.literal_eval(node.value))
    checked = {pages[path][1] for path in kinds if path in pages}
    for path, (_, template) in pages.items():
        assert template in checked, (
            f"add {path} or another page of {template} to KINDS in tests/site/test_access.py"
        )
