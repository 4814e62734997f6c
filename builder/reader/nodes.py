"""Maps and lists of a file, with their positions.

In: built by `yaml_text`. Out: a dict or a list whose keys and values are `Text`, so that a finding
can point at every one of them.
"""

from collections.abc import Collection, Iterable

from builder.model.text import NOWHERE, Position, Text

FEW = 40  # up to this many keys a plain search is faster than a dict


class Map(dict[Text, "Node"]):
    """A map of a file; `at` spans it from its first line to its end."""

    __slots__ = ("_written", "at")
    at: Position
    _written: dict[Text, Text]  # each key as written; built on first use in a large map

    def value(self, name: str) -> "Node | None":
        """Return the value under a key; a plain str finds a `Text` at no cost."""
        return self.get(name)  # type: ignore[call-overload,no-any-return]

    def key(self, name: str) -> Text:
        """Return the key as written, so that a finding can point at it."""
        if len(self) > FEW:
            return self._written_keys().get(Text(name)) or Text(name, self.at)
        return next((key for key in self if key == name), Text(name, self.at))

    def _written_keys(self) -> dict[Text, Text]:
        written = getattr(self, "_written", {})
        if len(written) != len(self):
            self._written = written = {key: key for key in self}
        return written


class Seq(list["Node"]):
    """A list of a file."""

    __slots__ = ("at",)
    at: Position


Node = Map | Seq | Text
NodePath = tuple[str | int, ...]  # the keys and indexes that lead to a node
EMPTY = Map()
EMPTY.at = NOWHERE


def key_at(root: Map, path: NodePath) -> Text:
    """Return the nearest key at or above a path, as written."""
    while path and not isinstance(path[-1], str):
        path = path[:-1]
    if not path:
        return next(iter(root), Text("", root.at))
    owner = node_at(root, path[:-1])
    assert isinstance(owner, Map)
    return owner.key(str(path[-1]))


def without_keys(root: Map, names: Collection[str]) -> Map:
    """Return a map without some of its keys."""
    rest = Map((key, value) for key, value in root.items() if key not in names)
    rest.at = root.at
    return rest


def without_broken(root: Map, paths: Iterable[NodePath]) -> Map:
    """Return a map without the keys in which something is broken."""
    return without_keys(root, {str(path[0]) for path in paths if path})


def node_at(root: Node, path: NodePath) -> Node:
    """Follow a path of keys and list indexes."""
    node = root
    for part in path:
        if isinstance(node, Map):
            node = node[Text(str(part))]
        elif isinstance(node, Seq):
            node = node[int(part)]
    return node
