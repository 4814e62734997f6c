"""All words of the format, in the order in which people read about them.

In: nothing. Out: `WordGroup`s, the words that a name may mean, the smallest tree.
"""

from pathlib import Path

from builder.reference.format_word import FormatWord, WordGroup
from builder.reference.schema_words import schema_words
from builder.reference.value_words import value_words

_SMALLEST = Path(__file__).parent / "smallest.yml"


def smallest_tree() -> str:
    """Return the smallest tree that does a job, as a file."""
    return _SMALLEST.read_text(encoding="utf-8")


def word_groups() -> tuple[WordGroup, ...]:
    """Return every word, grouped by where it stands first."""
    groups: dict[str, list[FormatWord]] = {}
    for word in schema_words():
        groups.setdefault(word.places[0].rpartition(" in ")[2], []).append(word)
    of_files = (WordGroup(_capitalized(name), tuple(words)) for name, words in groups.items())
    return (*of_files, *value_words())


def words_named(name: str) -> tuple[FormatWord, ...]:
    """Return the words of a name, in all their meanings."""
    wanted = name.strip().rstrip(":").casefold()
    words = (word for group in word_groups() for word in group.words)
    return tuple(word for word in words if word.name.rstrip(":").casefold() == wanted)


def _capitalized(place: str) -> str:
    return place if "/" in place else place[0].upper() + place[1:]
