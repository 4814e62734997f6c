"""Maps and lists of a file, with their positions.

In: built by `yaml_text`. Out: a dict or a list whose keys and values are `Text`, so that a finding
can point at every one of them.
"""

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
EMPTY = Map()
EMPTY.at = NOWHERE
