"""Rows of one kind, each compiled when it is first looked up.

In: entries by ID, and how one is compiled. Out: a mapping that looks up no entry but those asked
for.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import Generic, TypeVar

Entry = TypeVar("Entry")
RowT = TypeVar("RowT")


class CompiledRows(Mapping[str, RowT], Generic[Entry, RowT]):
    """Rows by the ID of their entry."""

    def __init__(self, entries: Mapping[str, Entry], row: Callable[[Entry], RowT]) -> None:
        """Begin with nothing compiled."""
        self._entries, self._row = entries, row
        self._rows: dict[str, RowT] = {}

    def __getitem__(self, id_: str) -> RowT:
        """Compile an entry. Raises KeyError where there is none."""
        if id_ not in self._rows:
            self._rows[id_] = self._row(self._entries[id_])
        return self._rows[id_]

    def __contains__(self, id_: object) -> bool:
        """Return whether there is such an entry."""
        return id_ in self._entries

    def __iter__(self) -> Iterator[str]:
        """Iterate over the IDs."""
        return iter(self._entries)

    def __len__(self) -> int:
        """Count the entries."""
        return len(self._entries)
