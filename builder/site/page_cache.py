"""The pages of a build, cached for the next one.

In: pages as HTML, and frames from the engine. Out: the body of each page and its frame, from this
build or the last one. A page is rendered only if its inputs changed; the engine runs only for a
frame that the last build did not have.
"""

import json
import sqlite3
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from builder.cache.database import Cache, drop_row, put_row, row, rows
from builder.cache.digest import digest
from builder.pages.page import Page
from builder.site.page_frames import frame_form, in_frame

PAGE, BODY, FRAME, FILE, ENGINE = "page", "body", "frame", "file", "engine"  # kinds of rows
ENGINE_FILES = ""  # the row of kind ENGINE with the names of the others


class CachedPage(NamedTuple):
    """What the cache knows of a page."""

    key: str  # changes when the page must be rendered again
    frame: str  # the name of its frame's row, which changes with the frame
    title: str
    summary: str
    files: tuple[str, ...]  # its further files, such as prints


@dataclass(frozen=True, slots=True)
class PageCache:
    """The pages of the last build and of the one in progress."""

    cache: Cache
    pages_key: str  # changes when every page must be rendered again
    frames_key: str  # changes when every page must be framed again
    last_build: Mapping[str, CachedPage]  # by the page's path
    this_build: dict[str, CachedPage] = field(default_factory=dict)  # by the page's path
    unframed: dict[str, str] = field(default_factory=dict)  # Markdown for the engine, by path
    engine_files: list[str] = field(default_factory=list)  # that all frames use, if the engine ran
    frames: dict[str, bytes] = field(default_factory=dict)  # as far as they were read, by name


def open_page_cache(cache: Cache, pages_key: str, frames_key: str) -> PageCache:
    """Begin a build with what is left of the last one."""
    last_build = {path: _cached_page(content) for path, content in rows(cache, PAGE)}
    names = json.loads(row(cache, ENGINE, ENGINE_FILES) or "[]")
    is_whole = names and all(row(cache, ENGINE, name) for name in names)
    return PageCache(cache, pages_key, frames_key, last_build if is_whole else {})


def _cached_page(content: bytes) -> CachedPage:
    key, frame, title, summary, files = json.loads(content)
    return CachedPage(key, frame, title, summary, tuple(files))


def reuse_page(pages: PageCache, path: str, key: str) -> bool:
    """Take a page over from the last build if its key is the same; return whether it was."""
    last = pages.last_build.get(path)
    if last is None or last.key != digest(pages.pages_key, key):
        return False
    if not _is_whole(pages, path, last):
        return False
    pages.this_build[path] = last
    return True


def _is_whole(pages: PageCache, path: str, last: CachedPage) -> bool:
    """Return whether no part of a page is missing or damaged in the cache."""
    parts = [_row(pages, BODY, path), _row(pages, FRAME, last.frame)]
    parts += (_row(pages, FILE, name) for name in last.files)
    return all(parts) and last.frame.startswith(pages.frames_key)


def put_page(
    pages: PageCache, page: Page, key: str = "", files: Mapping[str, bytes] | None = None
) -> None:
    """Add a page and its files to this build; without a key its text is the key."""
    form, files = frame_form(page), files or {}
    key = key or digest(form, page.title, page.summary, page.body)
    if reuse_page(pages, page.path, key):
        return
    frame = f"{pages.frames_key}/{digest(*form)}/{form.path}"
    if not pages.last_build or not _row(pages, FRAME, frame):
        pages.unframed[form.path] = form.text
    title, summary = str(page.title), str(page.summary)
    cached = CachedPage(digest(pages.pages_key, key), frame, title, summary, tuple(files))
    pages.this_build[page.path] = cached
    put_row(pages.cache, PAGE, page.path, json.dumps(cached).encode())
    put_row(pages.cache, BODY, page.path, page.body.encode())
    for name, content in files.items():
        put_row(pages.cache, FILE, name, content)


def put_engine_file(pages: PageCache, name: str, content: bytes) -> None:
    """Add a file of the engine: a frame, or a file that all frames use."""
    path = name.removesuffix(".html")
    if path in pages.unframed:
        form = digest(path, pages.unframed[path])
        put_row(pages.cache, FRAME, f"{pages.frames_key}/{form}/{path}", content)
    else:
        pages.engine_files.append(name)
        put_row(pages.cache, ENGINE, name, content)
        put_row(pages.cache, ENGINE, ENGINE_FILES, json.dumps(pages.engine_files).encode())


def framed_page(pages: PageCache, path: str) -> bytes:
    """Return a whole page: its body in its frame."""
    page = pages.this_build[path]
    frame, body = _content(pages, FRAME, page.frame), _content(pages, BODY, path)
    return in_frame(frame, page.title, page.summary, body)


def further_files(pages: PageCache) -> Iterator[tuple[str, bytes]]:
    """Yield the files of all pages and of the engine: name and content."""
    for page in pages.this_build.values():
        for name in page.files:
            yield name, _content(pages, FILE, name)
    for name in json.loads(_content(pages, ENGINE, ENGINE_FILES)):
        yield name, _content(pages, ENGINE, name)


def _content(pages: PageCache, kind: str, name: str) -> bytes:
    content = _row(pages, kind, name)
    if not content:
        raise sqlite3.DatabaseError(f"{name} is missing from the cache")
    return content


def _row(pages: PageCache, kind: str, name: str) -> bytes:
    """Return a row, b"" where it is missing or damaged; a frame is read once for all its pages."""
    if kind == FRAME:
        pages.frames[name] = pages.frames.get(name) or row(pages.cache, kind, name)
        return pages.frames[name]
    return row(pages.cache, kind, name)


def drop_removed_pages(pages: PageCache) -> None:
    """Drop the rows of pages, files and frames that this build no longer has."""
    files = {name for page in pages.this_build.values() for name in page.files}
    frames = {page.frame for page in pages.this_build.values()}
    for path, page in pages.last_build.items():
        if path not in pages.this_build:
            for kind in (PAGE, BODY):
                drop_row(pages.cache, kind, path)
        for name in set(page.files) - files:
            drop_row(pages.cache, FILE, name)
        if page.frame not in frames:
            drop_row(pages.cache, FRAME, page.frame)
