"""The pages of the site as they are made, kept for the next build.

In: pages as text, and their frames from the engine. Out: each page's frame and body, from this
build or the last. A page is made only if what it is made of has changed, and framed only if its
head is new.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from markupsafe import escape

from builder.cache.database import Cache, drop_row, put_row, row, rows
from builder.cache.digest import digest
from builder.pages.page import Page

PLACEHOLDER = "<!-- the page goes in here -->"
PAGE, BODY, FRAME, FILE, ENGINE = "page", "body", "frame", "file", "engine"  # kinds of rows
LIST = ""  # the name of the row with the names of the engine's files


class Kept(NamedTuple):
    """What is remembered of a page from one build to the next."""

    key: str  # changes when the page must be made anew
    head: str  # changes when it must be framed anew
    files: tuple[str, ...]  # further files of the site that belong to it


@dataclass(frozen=True, slots=True)
class Work:
    """A build under way; `now` and `unframed` grow while pages are put in."""

    cache: Cache
    everything: str  # changes when every page must be made anew
    frames: str  # changes when every page must be framed anew
    before: Mapping[str, Kept]  # by the page's path, from the last build
    now: dict[str, Kept] = field(default_factory=dict)  # by the page's path, of this build
    unframed: dict[str, str] = field(default_factory=dict)  # Markdown for the engine, by path
    engine: list[str] = field(default_factory=list)  # files that all frames ask for, if it ran


def begin_work(cache: Cache, everything: str, frames: str) -> Work:
    """Begin a build with what is left of the last one."""
    before = {path: _kept(content) for path, content in rows(cache, PAGE)}
    asked_for = json.loads(row(cache, ENGINE, LIST) or "[]")
    whole = asked_for and all(row(cache, ENGINE, name) for name in asked_for)
    return Work(cache, everything, frames, before if whole else {})


def _kept(content: bytes) -> Kept:
    key, head, files = json.loads(content)
    return Kept(key, head, tuple(files))


def is_fresh(work: Work, path: str, key: str) -> bool:
    """Whether the last build made this page from the same things; if so it is kept."""
    last = work.before.get(path)
    if last is None or last.key != digest(work.everything, key) or not _is_whole(work, path, last):
        return False
    work.now[path] = last
    return True


def _is_whole(work: Work, path: str, last: Kept) -> bool:
    """Whether nothing of a page has been damaged in the cache."""
    parts = [row(work.cache, BODY, path), row(work.cache, FRAME, path)]
    parts += (row(work.cache, FILE, name) for name in last.files)
    return all(parts) and last.head.startswith(work.frames)


def put(work: Work, page: Page, key: str = "", files: Mapping[str, bytes] | None = None) -> None:
    """Keep a page; without a key its text is the key."""
    text, files = markdown(page), files or {}
    key = key or digest(text, page.body)
    if is_fresh(work, page.path, key):
        return
    kept = Kept(digest(work.everything, key), work.frames + digest(text), tuple(files))
    last = work.before.get(page.path)
    if last is None or last.head != kept.head or not row(work.cache, FRAME, page.path):
        work.unframed[page.path] = text
    work.now[page.path] = kept
    put_row(work.cache, PAGE, page.path, json.dumps(kept).encode())
    put_row(work.cache, BODY, page.path, page.body.encode())
    for name, content in files.items():
        put_row(work.cache, FILE, name, content)


def put_frame(work: Work, name: str, content: bytes) -> None:
    """Keep a file that the engine made: the frame of a page, or what all frames ask for."""
    path = name.removesuffix(".html")
    if path in work.unframed:
        put_row(work.cache, FRAME, path, content)
    else:
        work.engine.append(name)
        put_row(work.cache, ENGINE, name, content)
        put_row(work.cache, ENGINE, LIST, json.dumps(work.engine).encode())


def engine_files(work: Work) -> Iterator[tuple[str, bytes]]:
    """Yield the files that all frames ask for: name and content."""
    for name in json.loads(_there(work, ENGINE, LIST)):
        yield name, _there(work, ENGINE, name)


def framed(work: Work, path: str) -> bytes:
    """Return a page whole: its body in its frame."""
    before, _, after = _there(work, FRAME, path).partition(PLACEHOLDER.encode())
    return b"".join((before, _there(work, BODY, path), after))


def files_of(work: Work) -> Iterator[tuple[str, bytes]]:
    """Yield the further files of all pages: name and content."""
    for kept in work.now.values():
        for name in kept.files:
            yield name, _there(work, FILE, name)


def _there(work: Work, kind: str, name: str) -> bytes:
    content = row(work.cache, kind, name)
    if not content:
        raise sqlite3.DatabaseError(f"{name} is gone from the cache")
    return content


def drop_gone(work: Work) -> None:
    """Drop what belongs to pages that this build no longer has."""
    files = {name for kept in work.now.values() for name in kept.files}
    for path, kept in work.before.items():
        if path not in work.now:
            for kind in (PAGE, BODY, FRAME):
                drop_row(work.cache, kind, path)
        for name in set(kept.files) - files:
            drop_row(work.cache, FILE, name)


def markdown(page: Page) -> str:
    """Write the page as the engine reads it: front matter, heading, the place of the body.

    All text is escaped as HTML here, because the engine's templates do not escape.
    """
    front = {"title": str(escape(page.title)), "description": str(escape(page.summary))}
    lines = [f"{name}: {json.dumps(value)}" for name, value in front.items()]
    if page.scripts:
        lines.append(f"scripts: {json.dumps(page.scripts)}")
    heading = f'<h1 id="title">{escape(page.title)}</h1>'
    return "\n".join(["---", *lines, "---", "", heading, "", PLACEHOLDER, ""])
