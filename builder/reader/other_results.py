"""Results and branches as an author writes them who doesn't know the form.

In: what stands there. Out: the same in the form of the format, or None.
"""

import re

from builder.model.text import Text
from builder.reader.nodes import Map, Node, Seq
from builder.reader.schemas.step_schema import KIND

ARROW = re.compile(r"([^,;>]+?) ?(?:->|=>|→) ?([\w-]+)[,;]? ?")


def results_in_brackets(value: Node) -> str | None:
    """Return `[yes: belt, no: fuse]` as the map that it is meant to be."""
    items = [item for item in value if isinstance(item, Map)] if isinstance(value, Seq) else []
    pairs = [pair for item in items for pair in item.items()]
    if len(pairs) != len(items) or not all(isinstance(words, Text) for _, words in pairs):
        return None
    return _as_map([(str(key), str(words)) for key, words in pairs]) if pairs else None


def results_with_arrows(words: str) -> str | None:
    """Return `yes -> belt, no -> fuse` as a map."""
    pairs = ARROW.findall(words)
    return _as_map(pairs) if pairs and ARROW.sub("", words) == "" else None


def _as_map(pairs: list[tuple[str, str]]) -> str:
    return f"{{{', '.join(f'{key.strip()}: {words}' for key, words in pairs)}}}"


def step_of_words(root: Map, words: str) -> str | None:
    """Return the step whose text these words are."""
    steps = root.value("steps")
    for name, node in steps.items() if isinstance(steps, Map) else ():
        if isinstance(node, Map) and any(node.value(kind) == words for kind in KIND):
            return str(name)
    return None
