"""A file in which YAML hides no mistake, read event by event.

In: the text of a file. Out: its root node, as `yaml_text` would give it, and the spans of quoted
text in it; None where anything is unusual, which only a closer look can tell. Nearly every file is
read here: to compose its nodes first, as that look needs them, takes half as long again.
"""

from typing import Any

import yaml
from yaml import events

from builder.model.text import Position, Text
from builder.reader.characters import Loader
from builder.reader.curly_quotes import IN_CURLY_QUOTES
from builder.reader.nesting import DEEPEST
from builder.reader.nodes import Map, Node, Seq

Spans = list[tuple[int, int]]  # of quoted and block scalars, in the order of the text


class UnusualError(Exception):
    """There is something in the text that needs a closer look."""


def plain_root(file: str, text: str) -> tuple[Node, Spans] | None:
    """Return the root of a file in which nothing is unusual, and the spans of quoted text."""
    if "&" in text or (not text.isascii() and IN_CURLY_QUOTES.search(text)):
        return None
    loader: Any = Loader(text)
    reading = _PlainReading(file, loader)
    try:
        return reading.root(), reading.spans
    except (UnusualError, yaml.YAMLError):
        return None
    finally:
        loader.dispose()


class _PlainReading:
    """One pass over the events of a file; half of them are texts, so these come first."""

    def __init__(self, file: str, loader: Any) -> None:
        self.file, self.next = file, loader.get_event
        self.spans: Spans = []

    def root(self) -> Node:
        self.next()  # the start of the stream
        if type(self.next()) is not events.DocumentStartEvent:
            raise UnusualError
        node = self.node(self.next(), 0)
        self.next()  # the end of the document
        if type(self.next()) is not events.StreamEndEvent:
            raise UnusualError
        return node

    def node(self, event: Any, depth: int) -> Node:
        kind = type(event)
        if kind is events.ScalarEvent:
            return self.text(event)
        if depth < DEEPEST and kind is events.MappingStartEvent:
            return self.map(event, depth + 1)
        if depth < DEEPEST and kind is events.SequenceStartEvent:
            return self.list(event, depth + 1)
        raise UnusualError

    def text(self, event: Any) -> Text:
        start, end = event.start_mark, event.end_mark
        place = self.file, start.line + 1, start.column + 1, end.line + 1, end.column + 1
        text = str.__new__(Text, event.value)  # Text(...) takes longer; once a key and a value
        text.at = tuple.__new__(Position, place)  # half the time of Position(...)
        if event.style:  # quoted, or a block
            self.spans.append((start.index, end.index))
            if not text and event.style in (">", "|"):
                raise UnusualError
        elif start.line != end.line and " - " in text:
            raise UnusualError
        return text

    def list(self, start: Any, depth: int) -> Seq:
        items = Seq()
        while type(event := self.next()) is not events.SequenceEndEvent:
            items.append(self.node(event, depth))
        items.at = self.between(start, event)
        return items

    def map(self, start: Any, depth: int) -> Map:
        """Read a map whose keys are texts, each once; in braces each has a value, too."""
        entries = Map()
        while type(event := self.next()) is events.ScalarEvent:
            key, following = self.text(event), self.next()
            value = self.node(following, depth)
            if key in entries or (start.flow_style and value == "" and not following.style):
                raise UnusualError
            entries[key] = value
        if type(event) is not events.MappingEndEvent:
            raise UnusualError
        entries.at = self.between(start, event)
        return entries

    def between(self, start: Any, end: Any) -> Position:
        first, last = start.start_mark, end.end_mark
        return Position(self.file, first.line + 1, first.column + 1, last.line + 1, last.column + 1)
