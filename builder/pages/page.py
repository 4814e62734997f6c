"""A page as every renderer gives it back.

In: nothing. Out: `Page`, a value that `site` writes into the work folder and fills into the frame.
"""

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Page:
    """One page of the site; `body` is finished HTML in which all text of authors is escaped."""

    path: str  # from the root of the site, without ending: `trees/charging/lamp-on`
    title: str  # plain text
    body: Markup
    summary: str = ""  # one plain sentence for link previews
    scripts: tuple[str, ...] = ()  # file names in `static/` that this page needs beside the common


@dataclass(frozen=True, slots=True)
class Print:
    """A sheet to be printed that belongs to a tree's page."""

    name: str
    suffix: str  # of its file, behind the tree's id


def root_of(path: str) -> str:
    """Return the way from a page back to the root of the site: "" or "../" once for each folder."""
    return "../" * path.count("/")
