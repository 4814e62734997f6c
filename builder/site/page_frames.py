"""The frames of pages: one for all pages of a folder that load the same scripts.

In: pages. Out: what the engine has to frame, and whole pages. A frame has a place each for the
title, the summary and the body, so a new page in a folder, or a new title, needs no engine.
"""

import json
import re
from typing import NamedTuple

from markupsafe import escape

from builder.cache.digest import digest
from builder.pages.page import Page

# Comments, because all text of authors is escaped: none of it can be one.
TITLE = "<!-- the title goes in here -->"
SUMMARY = "<!-- the summary goes in here -->"
BODY = "<!-- the page goes in here -->"
_PLACE = re.compile("|".join((TITLE, SUMMARY, BODY)).encode())


class FrameForm(NamedTuple):
    """What the engine makes a frame from."""

    path: str  # of the page that stands for all with this frame
    text: str  # Markdown


def frame_form(page: Page) -> FrameForm:
    """Return the form of a page's frame; pages at the root of the site have one each."""
    front = {
        "title": TITLE,
        "description": SUMMARY if page.summary else "",
        "scripts": page.scripts,
    }
    lines = [f"{name}: {json.dumps(value)}" for name, value in front.items() if value]
    text = "\n".join(["---", *lines, "---", "", f'<h1 id="title">{TITLE}</h1>', "", BODY, ""])
    folder = page.path.rpartition("/")[0]
    return FrameForm(f"{folder}/frame-{digest(text)}" if folder else page.path, text)


def in_frame(frame: bytes, title: str, summary: str, body: bytes) -> bytes:
    """Return a whole page. The engine's templates don't escape, so title and summary are here."""
    parts = {TITLE: escape(title).encode(), SUMMARY: escape(summary).encode(), BODY: body}
    return _PLACE.sub(lambda place: parts[place[0].decode()], frame)
