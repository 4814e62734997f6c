"""Maps and lists as they stand in a file, with their places.

In: made by `yaml_text`. Out: a plain dict or list for whoever needs only that; keys and values are
`Text`, so every one of them can be pointed at.
"""

from builder.model.text import NOWHERE, Position, Text

FEW = 40  # keys that are looked through one by one


class Map(dict[Text, "Node"]):
    """A map of a file; `at` is its first line to its end."""

    __slots__ = ("_written", "at")
    at: Position
    _written: dict[Text, Text]  # each key as written, once it was asked for among many

    def value(self, name: str) -> "Node | None":
        """Return the value under a key; a plain str finds a `Text` at no cost."""
        return self.get(name)  # type: ignore[call-overload,no-any-return]

    def key(self, name: str) -> Text:
        """Return the key as written, so that a finding can stand on it."""
        if len(self) > FEW:
            return self._among_many().get(Text(name)) or Text(name, self.at)
        return next((key for key in self if key == name), Text(name, self.at))

    def _among_many(self) -> dict[Text, Text]:
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
