"""Markdown of authors to HTML, with no way to bring HTML or a script along.

In: the body of an article. Out: `Markup`. Raw HTML is shown as the text it is; a link or a picture
that does not lead to a page or a file loses its address. The reader has told the author already.
"""

import re
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions.toc import TocExtension
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup

from builder.pages.addresses import slug

SAFE_LINK = re.compile(r"(?:https?://|mailto:|[\w.#][\w./#-]*$)")
# Only what the reader has judged is shown: nothing from elsewhere, nothing out of the folder.
SAFE_PICTURE = re.compile(r"pictures/\w[\w.-]*$")
ARTICLE = re.compile(r"\.md(?=#|$)")


class _Addresses(Treeprocessor):
    """Lead links to the pages that articles have become, and take unsafe addresses away."""

    def run(self, root: Element) -> None:
        """Go through the whole article."""
        for link in root.iter("a"):
            _keep(link, "href", SAFE_LINK)
            if not link.get("href", "http").startswith(("http", "mailto")):
                link.set("href", ARTICLE.sub(".html", link.get("href", "")))
        for picture in root.iter("img"):
            _keep(picture, "src", SAFE_PICTURE)


def _keep(element: Element, name: str, safe: re.Pattern[str]) -> None:
    if not safe.match(element.get(name, "")):
        element.attrib.pop(name, None)


def _anchor(text: str, _separator: str) -> str:
    return f"part-{slug(text).lower()}"


def html_of(body: str) -> Markup:
    """Render an article's body."""
    engine = Markdown(extensions=["tables", "sane_lists", TocExtension(slugify=_anchor)])
    engine.preprocessors.deregister("html_block")
    engine.inlinePatterns.deregister("html")
    engine.treeprocessors.register(_Addresses(engine), "addresses", 0)
    return Markup(engine.convert(body))
