"""What the mutators edit, and the mutants they make.

In: a sound tree or how-to article with its text. Out: `Mutant`s, made by edits at a position from
the model. An edit keeps the number of lines, so that the positions hold for the next one; only
`inserted` moves the lines below.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from builder.graph.moves import Place, moves_of
from builder.graph.routes import Exit, exits
from builder.model.checks import Check, Result
from builder.model.ends import Fix
from builder.model.knowledge import HowTo
from builder.model.library import Library
from builder.model.ranges import Range
from builder.model.text import Position, Text
from builder.model.tree import Step, Tree

Spot = tuple[str, int]  # a file and a line of it


@dataclass(frozen=True)
class Mutant:
    """A broken text and the lines where the finding may be: the changed one, or both ends.

    Where a fault is between files, the finding may be `elsewhere`, if it points at one of them.
    """

    text: str
    lines: frozenset[int]
    elsewhere: frozenset[Spot] = frozenset()


@dataclass(frozen=True)
class Limit:
    """A range of a result as written, for the only reading or for one of several."""

    check: Check
    result: Result
    reading: str
    side: Range
    text: Text


@dataclass(frozen=True)
class Sound:
    """A sound tree with its text, and the library around it."""

    tree: Tree
    text: str
    library: Library

    def replaced(self, at: Position, new: str, *also: int) -> Mutant:
        """Replace part of a line."""
        return Mutant(edited(self.text, at, new), frozenset({at.line, *also}))

    def with_status(self, status: str) -> Mutant:
        """Write another status at the head of the tree."""
        lines = self.text.split("\n")
        at = next(n for n, line in enumerate(lines) if line.startswith("status:"))
        lines[at] = f"status: {status}"
        return Mutant("\n".join(lines), frozenset({at + 1}))

    def without(self, at: Position, key: str, *also: int) -> Mutant:
        """Remove a key and everything under it from a step."""
        lines = self.text.split("\n")
        first = next(
            n
            for n in range(at.line - 1, -1, -1)
            if lines[n].strip().removeprefix("- ").startswith(f"{key}:")
        )
        return Mutant(_emptied(lines, first, ""), frozenset({first + 1, *also}))

    def flattened(self, key: Position, new: str) -> Mutant:
        """Replace a key and everything under it by one line."""
        lines = self.text.split("\n")
        line = lines[key.line - 1][: key.column - 1] + new
        return Mutant(_emptied(lines, key.line - 1, line, key.column - 1), frozenset({key.line}))

    def inserted(self, below: int, new: str, at: int = 0) -> Mutant:
        """Insert lines below a line; the finding is on line `at` of them, from 0."""
        lines = self.text.split("\n")
        text = "\n".join([*lines[:below], *new.split("\n"), *lines[below:]])
        return Mutant(text, frozenset({below + 1 + at}))

    def again(self, mutant: Mutant) -> "Sound":
        """Start from a mutant, to change one more thing."""
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
    def exits(self) -> Iterator[tuple[Step, Exit]]:
        """Every exit of every step."""
        return ((step, exit_) for step in self.steps for exit_ in exits(step))

    @property
    def limits(self) -> Iterator[Limit]:
        """Every range of every result, each with the position of its text."""
        for _, check in self.checks:
            for result in check.results:
                for name, side in result.ranges.items():
                    text = self._range_text(result, name)
                    if text:
                        yield Limit(check, result, name, side, text)

    def _range_text(self, result: Result, name: str) -> Text | None:
        """Find the range of one reading of several below the key of the result."""
        if not name:
            return result.text
        for number, line in enumerate(self.text.split("\n")[result.at.line - 1 :], result.at.line):
            if match := re.search(rf"(?<![\w-]){re.escape(name)}: ([^,}}#]*[^,}}# ])", line):
                at = Position(result.at.file, number, match.start(1) + 1, number, match.end(1) + 1)
                return Text(match[1], at) if not match[1].startswith(("'", '"')) else None
        return None

    def is_written(self, text: Text) -> bool:
        """Whether a text is in the file as it is, on one line and without quotes."""
        line = self.text.split("\n")[text.at.line - 1]
        return line[text.at.column - 1 : text.at.end_column - 1] == text

    def reached(self, *avoiding: str) -> frozenset[str]:
        """Return the steps that a walk from the start reaches before it leaves one of those."""
        moves = moves_of(self.tree)
        reached: set[Place] = set()
        stack = [Place(self.tree.start.id)]
        while stack:
            place = stack.pop()
            if place not in reached:
                reached.add(place)
                if place.step not in avoiding:
                    stack += [move.to for move in moves.moves_from(place) if move.to]
        return frozenset(place.step for place in reached)


@dataclass(frozen=True)
class SoundArticle:
    """A sound article with its text, and the library around it."""

    article: HowTo
    text: str
    library: Library

    def replaced(self, at: Position, new: str) -> Mutant:
        """Replace part of a line."""
        return Mutant(edited(self.text, at, new), frozenset({at.line}))


Mutator = Callable[[Sound], Iterator[Mutant]]
ArticleMutator = Callable[[SoundArticle], Iterator[Mutant]]


def edited(text: str, at: Position, new: str) -> str:
    """Replace part of one line of a text."""
    assert at.line == at.end_line
    lines = text.split("\n")
    line = lines[at.line - 1]
    lines[at.line - 1] = line[: at.column - 1] + new + line[at.end_column - 1 :]
    return "\n".join(lines)


def _emptied(lines: list[str], first: int, new: str, depth: int | None = None) -> str:
    """Replace a line by another, and the lines indented under it by empty ones."""
    if depth is None:
        depth = len(lines[first]) - len(lines[first].lstrip())
    last = first + 1
    while last < len(lines) and (
        not lines[last].strip() or len(lines[last]) - len(lines[last].lstrip()) > depth
    ):
        last += 1
    return "\n".join([*lines[:first], new, *("" for _ in range(first + 1, last)), *lines[last:]])
