"""The conditions of `kb/conditions.yml` from their maps.

In: the map of the file, and the paths at which it doesn't agree with its schema. Out: conditions by
id. What is broken in one is left out, and the condition says so.
"""

from collections.abc import Iterable

from builder.model.conditions import Condition, CountsAs, Takes
from builder.model.text import Text
from builder.reader.nodes import EMPTY, Map, NodePath, without_keys
from builder.reader.values import deeds, map_, number, text, texts


def condition_records(root: Map, broken: Iterable[NodePath]) -> dict[str, Condition]:
    """Read kb/conditions.yml."""
    mistakes = [(str(path[0]), str(path[1]) if path[1:] else "") for path in broken if path]
    return {
        str(id_): _condition(id_, map_(root, id_) or EMPTY, {k for i, k in mistakes if i == id_})
        for id_ in root
    }


def _condition(id_: Text, written: Map, broken: set[str]) -> Condition:
    node = without_keys(written, broken)
    takes, counts_as = text(node, "takes"), text(node, "counts_as")
    return Condition(
        id=id_,
        group=text(node, "group"),
        normal=text(node, "normal") == "yes",
        takes=Takes(str(takes)) if takes else None,
        text=text(node, "text"),
        enter=_lines(node, "enter"),
        undo=_lines(node, "undo"),
        excludes=texts(node, "excludes"),
        changed_with=texts(node, "changed_with"),
        also_say=text(node, "also_say"),
        minutes=number(node, "minutes"),
        wait=number(node, "wait"),
        hazards=texts(node, "hazards"),
        does=deeds(node),
        undo_does=deeds(node, "undo_does"),
        counts_as=CountsAs(str(counts_as)) if counts_as else None,
        starts_engine=text(node, "starts_engine") == "yes",
        broken=bool(broken),
    )


def _lines(node: Map, name: str) -> tuple[Text, ...]:
    """Return a line or a list of lines."""
    line = text(node, name)
    return (line,) if line else texts(node, name)
