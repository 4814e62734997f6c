"""Authors' Markdown to HTML, which can carry no HTML and no script of its own.

In: the body of an article. Out: `Markup`. Raw HTML is shown as text. A link that isn't to a page, a
web or a mail address loses its address, and so does a picture from outside the pictures folder; the
reader reports both to the author.
"""

import re
from functools import lru_cache
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions.toc import TocExtension
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup

from builder.pages.addresses import file_slug

_SAFE_LINK = re.compile(r"(?:https?://|mailto:|[\w.#][\w./#-]*$)")
# Only pictures that the reader has checked: none from elsewhere, none outside the folder.
_SAFE_PICTURE = re.compile(r"pictures/\w[\w.-]*$")
_ARTICLE = re.compile(r"\.md(?=#|$)")


class _Addresses(Treeprocessor):
    """Point links to articles at their pages, and remove unsafe addresses."""

    def run(self, root: Element) -> None:
        """Rewrite every link and picture of the article."""
        for link in root.iter("a"):
            _keep(link, "href", _SAFE_LINK)
            if not link.get("href", "http").startswith(("http", "mailto")):
                link.set("href", _ARTICLE.sub(".html", link.get("href", "")))
        for picture in root.iter("img"):
            _keep(picture, "src", _SAFE_PICTURE)


def _keep(element: Element, name: str, safe: re.Pattern[str]) -> None:
    if not safe.match(element.get(name, "")):
        element.attrib.pop(name, None)


def _anchor(text: str, _separator: str) -> str:
    return f"part-{file_slug(text).lower()}"


@lru_cache(2000)  # articles: `serve` renders again only one that was saved
def html_of(body: str) -> Markup:
    """Render an article's body."""
    engine = Markdown(extensions=["tables", "sane_lists", TocExtension(slugify=_anchor)])
    engine.preprocessors.deregister("html_block")
    engine.inlinePatterns.deregister("html")
    engine.treeprocessors.register(_Addresses(engine), "addresses", 0)
    return Markup(engine.convert(body))
