"""Mutators for how-to articles.

In: a sound article. Out: mutants of it.
"""

import re
from collections.abc import Iterator

from builder.model.text import Position, Text

from .sound import ArticleMutator, Mutant, SoundArticle

TARGET = re.compile(r"(!?)\[[^\]]*\]\(([\w/-]+\.\w+)\)")


def link_misspelled(sound: SoundArticle) -> Iterator[Mutant]:
    """Link to an article that doesn't exist, or to a heading that it doesn't have."""
    for target in _targets(sound, ""):
        yield sound.replaced(target.at, f"zz-{target}")
        yield sound.replaced(target.at, f"{target}#part-zz")
        yield sound.replaced(target.at, "#part-zz")
        yield sound.replaced(target.at, "../trees/zz/none.md")


def picture_misspelled(sound: SoundArticle) -> Iterator[Mutant]:
    """Show a picture that doesn't exist."""
    for target in _targets(sound, "!"):
        yield sound.replaced(target.at, target.replace("/", "/zz-"))
        yield sound.replaced(target.at, target.removeprefix("pictures/"))


def _targets(sound: SoundArticle, kind: str) -> Iterator[Text]:
    for number, line in enumerate(sound.text.split("\n"), 1):
        for match in TARGET.finditer(line):
            if match[1] == kind:
                start, end = match.start(2) + 1, match.end(2) + 1
                yield Text(match[2], Position("", number, start, number, end))


def tool_misspelled(sound: SoundArticle) -> Iterator[Mutant]:
    """Name a tool that the shop doesn't have."""
    for tool in sound.article.tools:
        yield sound.replaced(tool.at, f"{tool}zz")


def hazard_misspelled(sound: SoundArticle) -> Iterator[Mutant]:
    """Name a hazard that doesn't exist."""
    for hazard in sound.article.hazards:
        yield sound.replaced(hazard.at, f"{hazard}zz")


def review_aged(sound: SoundArticle) -> Iterator[Mutant]:
    """Set the last review to long ago."""
    if sound.article.reviewed:
        yield sound.replaced(sound.article.reviewed.date.at, "2020-02-29")


def with_words(words: str) -> ArticleMutator:
    """Return a mutator that writes words into the purpose and at the end of every paragraph."""

    def written(sound: SoundArticle) -> Iterator[Mutant]:
        yield sound.replaced(sound.article.purpose.at, words)
        for number, line in enumerate(sound.text.split("\n"), 1):
            if number >= sound.article.body_line and line.endswith("."):
                end = len(line) + 1
                yield sound.replaced(Position("", number, end, number, end), f" {words}.")

    return written
