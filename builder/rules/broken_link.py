"""A link in an article that leads to no page.

Why: A tech with gloves on taps it and gets an error page.

Wrong:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Then measure the [voltage drop](volt-drop.md).

Right:

    # kb/how-to/belt.md
    ---
    title: Belt and tensioner
    purpose: Finds a belt that slips
    reviewed: {by: M. Lind, date: 2026-09-01}
    ---
    Then measure the [voltage drop](voltage-drop.md).

Fix: Link to another article as `other-article.md`, to a tree as `../trees/system/tree.md`, to a
heading as `#part-` and its words in lowercase with hyphens.
"""

import re
from collections.abc import Iterator
from datetime import date
from posixpath import relpath

from builder.model.finding import Finding, Severity
from builder.model.knowledge import HowTo
from builder.model.library import Library
from builder.rules.shared.article_links import PAGE, ArticleLink, anchors_of, links_in
from builder.rules.shared.close_names import suggestion
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="broken-link",
    family=Family.KNOWLEDGE,
    severity=Severity.ERROR,
    summary="A link in an article that leads to no page.",
)
WHY = "a tech with gloves on taps it and gets an error page"

FILE = re.compile(r"(?:^|/)(trees|modules)/([\w/-]+)\.ya?ml$")


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every link of an article to a page or a heading that doesn't exist."""
    for article in library.how_tos.values():
        for link in links_in(article):
            if not link.is_picture:
                yield from _link(library, article, link)


def _link(library: Library, article: HowTo, link: ArticleLink) -> Iterator[Finding]:
    known = _pages_beside(library, link)
    if link.path and PAGE.sub("", link.path) not in known:
        targets = (relpath(f"{page}.md", "how-to") for page in known)
        hint = _page_of_file(library, link.target) or suggestion(
            link.target, targets, "link to an article as `other-article.md`"
        )
        yield RULE.finding(link.at, f"page `{link.target}` doesn't exist", WHY, hint)
        return
    target = library.how_tos.get(link.article) if link.path else article
    if link.anchor and target and link.anchor not in anchors_of(target):
        anchors = (f"#{anchor}" for anchor in anchors_of(target))
        hint = suggestion(f"#{link.anchor}", anchors, "use a heading of the article")
        yield RULE.finding(link.at, f"heading `#{link.anchor}` doesn't exist", WHY, hint)


def _page_of_file(library: Library, target: str) -> str:
    """Return the hint for a link to a file of the shop that has a page of its own."""
    match = FILE.search(target)
    if not match or match[2] not in (library.trees if match[1] == "trees" else library.modules):
        return ""
    return f"link to its page: `../{match[1]}/{match[2]}.md`"


def _pages_beside(library: Library, link: ArticleLink) -> list[str]:
    """Return the pages of the folder that a link leads to; `trees` has folders in it."""
    if not PAGE.search(link.path):
        return []
    folder = link.path.split("/")[0]
    names = {"how-to": library.how_tos, "trees": library.trees, "modules": library.modules}
    return [f"{folder}/{name}" for name in names.get(folder, {})]
