"""Bounds on trees and articles: beyond them nobody can follow the text, and no program should try.

In: the map of a tree, or the text of an article. Out: a finding for each bound that is broken. They
are asked before anything is worked out, so that time and memory stay within bounds as well.
"""

import re
from collections.abc import Iterator

from builder.model.finding import Finding
from builder.model.text import Position, Text
from builder.reader.nodes import Map
from builder.reader.source import Source, mistake

MOST_OF_ALL = 500  # parts of one list or map; a tree of a hundred steps already fills a wall
MOST = {"results": 50, "readings": 20}
LONGEST_ARTICLE = 64 * 1024  # signs; the longest of a shop has about 3,000
LONGEST_PARAGRAPH = 4_000  # signs; Markdown takes time with their square
DEEPEST_BRACKETS = 8  # open at a time in one paragraph; Markdown takes time with their square
DEEPEST_LIST = 8  # Markdown goes into lists and quotes as deep as the text asks
BLANKS_A_LEVEL = 4

BRACKET = re.compile(r"[\[\]()]")
MARKERS = re.compile(r"[ \t]*(?:(?:[-*+]|\d+\.|>)(?:[ \t]+|$)|>)")


def too_many(root: Map) -> Iterator[Finding]:
    """Yield every list or map of a tree that has more parts than anyone follows."""
    for key, value in root.items():
        if isinstance(value, Text):
            continue
        most = MOST.get(key, MOST_OF_ALL)
        if len(value) > most:
            yield mistake("size", key.at.file, f"`{key}` has {len(value)} parts; {most} are read",
                          "nobody can follow a tree of that size, or print it",
                          "split it into several trees that hand off to each other",
                          key.at)  # fmt: skip
            continue
        for part in (value,) if isinstance(value, Map) else value:
            if isinstance(part, Map):
                yield from too_many(part)


def too_large(source: Source, start: int) -> Iterator[Finding]:
    """Yield what in an article's body is too long or too deep to be read."""
    if len(source.text) > LONGEST_ARTICLE:
        yield mistake("size", source.file, f"the article has {len(source.text)} signs; "
                      f"{LONGEST_ARTICLE} are read", "nobody reads that much beside a vehicle",
                      "split it into several articles that link to each other")  # fmt: skip
        return
    first = source.text.count("\n", 0, start) + 1
    length = depth = 0
    for number, line in enumerate(source.text[start:].split("\n"), first):
        if not line.strip():
            length = depth = 0
            continue
        at = Position(source.file, number, 1, number, max(2, len(line) + 1))
        before, length = length, length + len(line)
        if before <= LONGEST_PARAGRAPH < length:
            yield _too_long(at)
        before, depth = depth, _most_open(line, depth)
        if before <= DEEPEST_BRACKETS < depth:
            yield _too_deep(at, "brackets", DEEPEST_BRACKETS)
        if _levels(line) > DEEPEST_LIST:
            yield _too_deep(at, "lists and quotes", DEEPEST_LIST)


def _most_open(line: str, depth: int) -> int:
    """Return how many brackets are open behind a line, or, if that is too many, at their peak."""
    for match in BRACKET.finditer(line):
        depth = depth + 1 if match.group() in "[(" else max(0, depth - 1)
        if depth > DEEPEST_BRACKETS:
            return depth
    return depth


def _levels(line: str) -> int:
    """Return how many lists and quotes a line stands in, by its blanks and its markers."""
    text = line.expandtabs(BLANKS_A_LEVEL)
    levels = (len(text) - len(text.lstrip(" "))) // BLANKS_A_LEVEL
    end = 0
    while levels <= DEEPEST_LIST and (match := MARKERS.match(line, end)):
        levels, end = levels + 1, match.end()
    return levels


def _too_long(at: Position) -> Finding:
    return mistake("size", at.file, f"the paragraph has more than {LONGEST_PARAGRAPH} signs here",
                   "nobody reads that much at once beside a vehicle",
                   "begin a new paragraph with an empty line", at)  # fmt: skip


def _too_deep(at: Position, what: str, most: int) -> Finding:
    return mistake("depth", at.file, f"more than {most} {what} stand inside each other here",
                   "no article needs that; something may have been left open",
                   "close the brackets, or write it flat", at)  # fmt: skip
