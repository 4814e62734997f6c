"""What is broken, and what comes of it.

In: a tree or a how-to article that is sound, with its text. Out: `Mutant`s, made by edits at a
position that the model remembers. An edit keeps the number of lines, so that the positions hold for
the next one; only `inserted` moves what stands below.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from builder.graph.moves import Place, paths
from builder.graph.routes import Exit, exits
from builder.model.knowledge import HowTo
from builder.model.library import Library
from builder.model.ranges import Range
from builder.model.text import Position, Text
from builder.model.tree import Check, Fix, Result, Step, Tree

Spot = tuple[str, int]  # a file and a line of it


@dataclass(frozen=True)
class Mutant:
    """A broken text and the lines on which the finding may stand: the changed one, or both ends.

    Where a fault lies between files, it may stand `elsewhere`, if only it points at one of them.
    """

    text: str
    lines: frozenset[int]
    elsewhere: frozenset[Spot] = frozenset()


@dataclass(frozen=True)
class Limit:
    """A range of a result as it is written, of one reading or of one among several."""

    check: Check
    result: Result
    reading: str
    side: Range
    said: Text


@dataclass(frozen=True)
class Sound:
    """A sound tree with its text, and what is known beside it."""

    tree: Tree
    text: str
    library: Library

    def replaced(self, at: Position, new: str, *also: int) -> Mutant:
        """Write something else at a place of one line."""
        return Mutant(edited(self.text, at, new), frozenset({at.line, *also}))

    def without(self, at: Position, key: str, *also: int) -> Mutant:
        """Take a key with all that stands under it out of a step."""
        lines = self.text.split("\n")
        first = next(
            n
            for n in range(at.line - 1, -1, -1)
            if lines[n].strip().removeprefix("- ").startswith(f"{key}:")
        )
        return Mutant(_emptied(lines, first, ""), frozenset({first + 1, *also}))

    def flattened(self, key: Position, new: str) -> Mutant:
        """Write one line in the place of a key and all that stands under it."""
        lines = self.text.split("\n")
        line = lines[key.line - 1][: key.column - 1] + new
        return Mutant(_emptied(lines, key.line - 1, line, key.column - 1), frozenset({key.line}))

    def inserted(self, below: int, new: str, at: int = 0) -> Mutant:
        """Write lines below a line; the finding is to stand on line `at` of them, from 0."""
        lines = self.text.split("\n")
        text = "\n".join([*lines[:below], *new.split("\n"), *lines[below:]])
        return Mutant(text, frozenset({below + 1 + at}))

    def again(self, mutant: Mutant) -> "Sound":
        """Go on from a mutant, to change one thing more."""
        return replace(self, text=mutant.text)

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps of the tree."""
        return tuple(self.tree.steps.values())

    @property
    def checks(self) -> Iterator[tuple[Step, Check]]:
        """The checks of the tree."""
        for step in self.steps:
            if isinstance(step.body, Check):
                yield step, step.body

    @property
    def fixes(self) -> Iterator[tuple[Step, Fix]]:
        """The fixes of the tree."""
        for step in self.steps:
            if isinstance(step.body, Fix):
                yield step, step.body

    @property
    def ways(self) -> Iterator[tuple[Step, Exit]]:
        """Every way out of every step."""
        return ((step, way) for step in self.steps for way in exits(step))

    @property
    def limits(self) -> Iterator[Limit]:
        """Every range of every result, each with the place of its words."""
        for _, check in self.checks:
            for result in check.results:
                for name, side in result.ranges.items():
                    said = self._said(result, name)
                    if said:
                        yield Limit(check, result, name, side, said)

    def _said(self, result: Result, name: str) -> Text | None:
        """Find the words of one reading of several below the key of the result."""
        if not name:
            return result.said
        for number, line in enumerate(self.text.split("\n")[result.at.line - 1 :], result.at.line):
            if match := re.search(rf"(?<![\w-]){re.escape(name)}: ([^,}}#]*[^,}}# ])", line):
                at = Position(result.at.file, number, match.start(1) + 1, number, match.end(1) + 1)
                return Text(match[1], at) if not match[1].startswith(("'", '"')) else None
        return None

    def is_written(self, text: Text) -> bool:
        """Whether a text stands in the file as it is, on one line and without quotes."""
        line = self.text.split("\n")[text.at.line - 1]
        return line[text.at.column - 1 : text.at.end_column - 1] == text

    def reached(self, *avoiding: str) -> frozenset[str]:
        """Return the steps that a walk from the start comes to and has not left one of those."""
        ways = paths(self.tree)
        found: set[Place] = set()
        waiting = [Place(self.tree.start.id)]
        while waiting:
            place = waiting.pop()
            if place not in found:
                found.add(place)
                if place.step not in avoiding:
                    waiting += [move.to for move in ways.moves(place) if move.to]
        return frozenset(place.step for place in found)


@dataclass(frozen=True)
class SoundArticle:
    """A sound article with its text, and what is known beside it."""

    article: HowTo
    text: str
    library: Library

    def replaced(self, at: Position, new: str) -> Mutant:
        """Write something else at a place of one line."""
        return Mutant(edited(self.text, at, new), frozenset({at.line}))


Mutator = Callable[[Sound], Iterator[Mutant]]
ArticleMutator = Callable[[SoundArticle], Iterator[Mutant]]


def edited(text: str, at: Position, new: str) -> str:
    """Write something else at a place of one line of a text."""
    assert at.line == at.end_line
    lines = text.split("\n")
    line = lines[at.line - 1]
    lines[at.line - 1] = line[: at.column - 1] + new + line[at.end_column - 1 :]
    return "\n".join(lines)


def _emptied(lines: list[str], first: int, new: str, depth: int | None = None) -> str:
    """Write a line in the place of another, and nothing in place of what is set in under it."""
    if depth is None:
        depth = len(lines[first]) - len(lines[first].lstrip())
    last = first + 1
    while last < len(lines) and (
        not lines[last].strip() or len(lines[last]) - len(lines[last].lstrip()) > depth
    ):
        last += 1
    kept = [*lines[:first], new, *("" for _ in range(first + 1, last)), *lines[last:]]
    return "\n".join(kept)
