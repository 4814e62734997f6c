"""How deep a file is nested, before it is composed.

In: the text of a file. Out: the finding for a place that is too deep for any tree, and for the
composer.
"""

import re
from typing import Any

import yaml

from builder.model.finding import Finding
from builder.model.text import Position
from builder.reader.characters import Loader
from builder.reader.source import Source, mistake

DEEPEST = 20  # levels; the format needs seven
FEW_BRACKETS = 200  # with fewer, and no deep indent, the composer can't recurse far
DEEP_INDENT = re.compile(r"\n[ -]{200}")


def too_deep(source: Source, text: str) -> Finding | None:
    """Check the nesting before composing: the composer recurses as deep as the file goes."""
    if text.count("[") + text.count("{") < FEW_BRACKETS and not DEEP_INDENT.search(f"\n{text}"):
        return None
    depth = 0
    try:
        for event in yaml.parse(text, Loader=Loader):
            if isinstance(event, yaml.events.CollectionStartEvent):
                depth += 1
                if depth > DEEPEST:
                    return deep_nesting(source, event.start_mark)
            elif isinstance(event, yaml.events.CollectionEndEvent):
                depth -= 1
    except yaml.YAMLError:
        return None  # reported with its place when it is composed
    return None


def deep_nesting(source: Source, mark: Any) -> Finding:
    """Return the finding for a place that is nested too deep."""
    at = Position(source.file, mark.line + 1, mark.column + 1, mark.line + 1, mark.column + 2)
    return mistake("depth", at, f"more than {DEEPEST} levels are nested here",
                   "no tree needs that; a bracket may be missing",
                   "close the brackets, or use separate lines")  # fmt: skip
