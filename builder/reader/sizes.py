"""Limits on the size of trees and articles: a tech couldn't follow anything larger.

In: the map of a tree, or the text of an article. Out: a finding for each limit that is exceeded.
They are checked before anything is computed, so time and memory stay bounded too.
"""

import re
from collections.abc import Iterator

from builder.model.finding import Finding
from builder.model.text import Position, Text
from builder.reader.nodes import EMPTY, Map, Seq
from builder.reader.source import Source, mistake
from builder.reader.values import map_

MOST_PARTS = 500  # of one list or map; a tree of a hundred steps already fills a wall
MOST_PARTS_OF = {"results": 50, "readings": 20}
MOST_CHANCES = 100  # of a tree; the exact minutes of more take longer than anyone waits
LONGEST_ARTICLE = 64 * 1024  # characters; a shop's longest has about 3,000
LONGEST_PARAGRAPH = 4_000  # characters; Markdown's time grows with the square
DEEPEST_BRACKETS = 8  # open at a time in one paragraph; Markdown's time grows with the square
DEEPEST_LIST = 8  # Markdown recurses into lists and quotes
SPACES_PER_LEVEL = 4

BRACKET = re.compile(r"[\[\]()]")
MARKERS = re.compile(r"[ \t]*(?:(?:[-*+]|\d+\.|>)(?:[ \t]+|$)|>)")


def too_many(root: Map) -> Iterator[Finding]:
    """Yield a finding for every list or map of a tree with too many parts, or for its chances."""
    excess = False
    for finding in _too_long_lists(root):
        excess = True
        yield finding
    chances = [] if excess else list(_chances(root))
    if len(chances) > MOST_CHANCES:
        yield mistake("size", chances[MOST_CHANCES].at,
                      f"{len(chances)} results have a `chance`; limit {MOST_CHANCES}",
                      "nobody can follow a tree that leads back in so many places",
                      "split it into several trees that hand off to each other")  # fmt: skip


def _chances(root: Map) -> Iterator[Text]:
    """Yield the key of each `chance` of a result."""
    for step in (map_(root, "steps") or EMPTY).values():
        results = step.value("results") if isinstance(step, Map) else None
        for result in results if isinstance(results, Seq) else ():
            if isinstance(result, Map) and "chance" in result:
                yield result.key("chance")


def _too_long_lists(root: Map) -> Iterator[Finding]:
    for key, value in root.items():
        if isinstance(value, Text):
            continue
        most = MOST_PARTS_OF.get(key, MOST_PARTS)
        if len(value) > most:
            yield mistake("size", key.at, f"`{key}` has {len(value)} parts; limit {most}",
                          "a tree of that size can't be followed or printed",
                          "split it into several trees that hand off to each other")  # fmt: skip
            continue
        for part in (value,) if isinstance(value, Map) else value:
            if isinstance(part, Map):
                yield from _too_long_lists(part)


def too_large(source: Source, start: int) -> Iterator[Finding]:
    """Yield a finding for everything in an article's body that is too long or nested too deep."""
    if len(source.text) > LONGEST_ARTICLE:
        yield mistake("size", source.file, f"the article is {len(source.text)} characters; "
                      f"limit {LONGEST_ARTICLE}", "that is too much to read beside a vehicle",
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
    """Return how many brackets are open after a line, or at the first place with too many."""
    for match in BRACKET.finditer(line):
        depth = depth + 1 if match.group() in "[(" else max(0, depth - 1)
        if depth > DEEPEST_BRACKETS:
            return depth
    return depth


def _levels(line: str) -> int:
    """Return how many lists and quotes a line is inside, by its spaces and markers."""
    text = line.expandtabs(SPACES_PER_LEVEL)
    levels = (len(text) - len(text.lstrip(" "))) // SPACES_PER_LEVEL
    end = 0
    while levels <= DEEPEST_LIST and (match := MARKERS.match(line, end)):
        levels, end = levels + 1, match.end()
    return levels


def _too_long(at: Position) -> Finding:
    return mistake("size", at, f"the paragraph is over {LONGEST_PARAGRAPH} characters here",
                   "that is too much to read in one go beside a vehicle",
                   "start a new paragraph with an empty line")  # fmt: skip


def _too_deep(at: Position, what: str, most: int) -> Finding:
    return mistake("depth", at, f"more than {most} {what} are nested here",
                   "no article needs that; a bracket may be missing",
                   "close the brackets, or nest less")  # fmt: skip
