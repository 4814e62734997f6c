"""A page as every renderer returns it.

In: nothing. Out: `Page`, which `site` frames and writes; `TreePrint`, a PDF that a tree's page
links to.
"""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Page:
    """One page of the site; `body` is finished HTML in which all text of authors is escaped."""

    path: str  # from the root of the site, without `.html`: `trees/charging/lamp-on`
    title: str  # plain text
    body: Markup
    summary: str = ""  # one plain sentence for link previews
    scripts: tuple[str, ...] = ()  # files in `web/` that this page needs besides `site.js`


@dataclass(frozen=True, slots=True)
class TreePrint:
    """A PDF of a tree."""

    name: str  # on its button
    suffix: str  # of its file, after the tree's ID
