"""A finding: what is wrong, where, why it matters in the bay, and what to write instead.

In: the reader and the rules create findings. Out: `report` shows them. Findings are values, never
exceptions.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

from builder.model.text import Position, Text


class Severity(StrEnum):
    """How serious a finding is: an error stops the build, a warning doesn't."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Related:
    """Another place that belongs to a finding."""

    at: Position
    note: str


@dataclass(frozen=True, slots=True)
class Edit:
    """What a hint says, as an exact change of the file: where it can be made without a thought."""

    at: Position  # on one line; an empty span is where something is put in
    old: str  # the text there; the quotes around a value aren't part of it
    new: str  # the text instead; `\\n` is a line end as the file has them


@dataclass(frozen=True, slots=True)
class Finding:
    """One mistake of an author, with everything needed to fix it."""

    rule: str  # the name a technician sees, such as `reading-gap`
    severity: Severity
    at: Position
    message: str  # what is wrong, with the author's own words in backquotes
    why: str = ""  # why it matters in the bay
    hint: str = ""  # what to write instead
    related: tuple[Related, ...] = ()
    edit: Edit | None = None  # only where the hint leaves no choice


def with_edit(finding: Finding, edit: Edit | None) -> Finding:
    """Return the finding with the edit that does what its hint says."""
    return replace(finding, edit=edit)


def edit_of(text: Text, new: str) -> Edit | None:
    """Return the edit that writes a key or a value in another way.

    None where its position is that of more than the text, or of one folded over several lines.
    """
    at = text.at
    width = at.end_column - at.column
    is_whole = at.line == at.end_line and width in (len(text), len(text) + 2)  # with its quotes
    return Edit(at, str(text), new) if is_whole else None


def edit_in_line(file: str, line: int, column: int, old: str, new: str) -> Edit:
    """Return the edit of a part of a line; line and column count from 1."""
    return Edit(Position(file, line, column, line, column + len(old)), old, new)
