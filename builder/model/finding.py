"""A finding: what is wrong, where, why it matters in the bay, and what to write instead.

In: made by the reader and the rules. Out: shown by `report`. Findings are values, never exceptions.
"""

from dataclasses import dataclass
from enum import StrEnum

from builder.model.text import Position


class Severity(StrEnum):
    """How grave a finding is: an error stops the build, a warning does not."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Related:
    """Another place that belongs to a finding."""

    at: Position
    note: str


@dataclass(frozen=True, slots=True)
class Finding:
    """One mistake of an author, with all that is needed to mend it."""

    rule: str  # the name a technician sees, such as `reading-gap`
    severity: Severity
    at: Position
    message: str  # what is wrong, with the author's own words in back quotes
    why: str = ""  # why it matters in the bay
    hint: str = ""  # what to write instead
    related: tuple[Related, ...] = ()
