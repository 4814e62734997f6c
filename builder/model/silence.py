"""A rule silenced by an author on one line, with a reason.

In: filled by the reader from comments. Out: read where findings are dropped.
"""

from dataclasses import dataclass

from builder.model.text import Position


@dataclass(frozen=True, slots=True)
class Silence:
    """One rule silenced on one line."""

    at: Position  # of the comment
    rule: str
    reason: str  # "" where none is given: then nothing is silenced
    line: int  # the line that it counts for
