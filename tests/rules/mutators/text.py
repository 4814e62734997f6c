"""Mutators for the rules of text.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.model.text import Position

from .sound import Mutant, Sound


def key_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Leave a letter out of a key of a step."""
    for number, line in enumerate(sound.text.split("\n"), 1):
        for key in ("minutes", "branch", "verify", "when", "tools"):
            if line.startswith((f"    {key}:", f"        {key}:")):
                start = line.index(key) + 1
                at = Position("", number, start, number, start + len(key))
                yield sound.replaced(at, key[:-2] + key[-1], number - 1, number - 2)
