"""The links of an article, and where they lead.

In: an article. Out: its `ArticleLink`s with their positions; what is inside code is no link.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from posixpath import normpath
from urllib.parse import unquote

from builder.model.knowledge import HowTo
from builder.model.text import Position

CODE = re.compile(r"```.*?```|`[^`\n]*`", re.DOTALL)
_TARGET = r"\[[^\]\n]*\]\(\s*<?([^)>\s]+)>?(?:\s+\"[^\"]*\")?\s*\)"
PICTURE = re.compile(f"!{_TARGET}")
LINK = re.compile(_TARGET)
REFERENCE = re.compile(r"^ {0,3}\[[^\]\n]+\]:\s*<?([^>\s]+)", re.MULTILINE)
OUTSIDE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)
HEADING = re.compile(r"^#{1,6}\s+(.+?)\s*#*\s*$", re.MULTILINE)
PAGE = re.compile(r"\.(?:md|html)$")


@dataclass(frozen=True, slots=True)
class ArticleLink:
    """A link or a picture of an article that stays inside the shop."""

    at: Position
    target: str  # as written
    is_picture: bool
    path: str  # from the root of the site, `how-to/voltage-drop.md`; "" for the article itself
    anchor: str  # behind `#`

    @property
    def article(self) -> str:
        """The id of the article that it leads to, or nothing."""
        folder, _, name = self.path.rpartition("/")
        return PAGE.sub("", name) if folder == "how-to" and PAGE.search(name) else ""


def links_in(article: HowTo) -> Iterator[ArticleLink]:
    """Yield every link and picture of an article that doesn't lead to another site."""
    for start, target, is_picture in targets_in(article.body):
        page, _, anchor = unquote(target).partition("#")
        path = normpath(f"how-to/{page}") if page else ""
        at = _position(article, start, len(target))
        yield ArticleLink(at, target, is_picture, path, anchor)


def targets_in(markdown: str) -> Iterator[tuple[int, str, bool]]:
    """Yield where a target inside the shop begins, the target, and whether it is a picture."""
    body = CODE.sub(_blanks, markdown)
    around = PICTURE.sub(_blanks, body)  # of a picture inside a link, this leaves the link
    for form, text in ((PICTURE, body), (LINK, around), (REFERENCE, around)):
        for match in form.finditer(text):
            if not OUTSIDE.match(match[1]):
                yield match.start(1), match[1], form is PICTURE


def _blanks(match: re.Match[str]) -> str:
    return re.sub(r"[^\n]", " ", match.group())


def _position(article: HowTo, start: int, length: int) -> Position:
    line = article.body_line + article.body.count("\n", 0, start)
    column = start - article.body.rfind("\n", 0, start)
    return Position(article.file, line, column, line, column + length)


def anchors_of(article: HowTo) -> set[str]:
    """Return the anchors of an article's headings: `## Load test` is `part-load-test`."""
    headings = (re.sub(r"[^A-Za-z0-9]+", "-", match[1]) for match in HEADING.finditer(article.body))
    return {f"part-{words.strip('-').lower()}" for words in headings}
