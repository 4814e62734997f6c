"""The how-to articles.

In: the catalog of trees. Out: `Page`s; each article lists the trees that use it.
"""

from collections.abc import Iterator

from builder.model.knowledge import HowTo
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.prose import html_of
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.hazards import by_severity


def how_to_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of articles and each article."""
    articles = sorted(
        catalog.library.how_tos.values(), key=lambda article: article.title.casefold()
    )
    body = render("how_tos.html", "how-to/index", articles=articles)
    yield Page("how-to/index", "How-to", body, summary="How to make each measurement")
    for article in articles:
        yield _article_page(catalog, article)


def _article_page(catalog: TreeCatalog, article: HowTo) -> Page:
    library, path = catalog.library, addresses.how_to_path(article.id)
    hazards = [library.hazards[id_] for id_ in article.hazards if id_ in library.hazards]
    body = render(
        "how_to.html",
        path,
        article=article,
        body=html_of(article.body),
        hazards=by_severity(hazards),
        tools=[(id_, library.tools[id_].name) for id_ in article.tools if id_ in library.tools],
        trees=catalog.by_how_to.get(article.id, ()),
    )
    return Page(path, str(article.title), body, summary=str(article.purpose))
