"""A finding: what is wrong, where, why it matters in the bay, and what to write instead.

In: the reader and the rules create findings. Out: `report` shows them. Findings are values, never
exceptions.
"""

from dataclasses import dataclass
from enum import StrEnum

from builder.model.text import Position


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
class Finding:
    """One mistake of an author, with everything needed to fix it."""

    rule: str  # the name a technician sees, such as `reading-gap`
    severity: Severity
    at: Position
    message: str  # what is wrong, with the author's own words in backquotes
    why: str = ""  # why it matters in the bay
    hint: str = ""  # what to write instead
    related: tuple[Related, ...] = ()
