"""A word of the format, as people look it up.

In: filled from the schemas and the closed lists. Out: `FormatWord`, shown by command and page.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FormatWord:
    """One word; the same word with another meaning is another `FormatWord`."""

    name: str  # as it is written in a file
    means: str
    places: tuple[str, ...]  # where it may stand, the first of them names its group
    example: str = ""  # a line as it is written
    choices: tuple[str, ...] = ()  # what it may be, if that is a closed list
    default: str = ""  # what holds without it
    required: bool = False


@dataclass(frozen=True, slots=True)
class WordGroup:
    """Words that stand in one place."""

    title: str
    words: tuple[FormatWord, ...]
