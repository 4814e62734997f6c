"""A rule that an author silences on one line, with a reason.

In: filled by the reader from comments. Out: used to drop findings.
"""

from dataclasses import dataclass

from builder.model.text import Position


@dataclass(frozen=True, slots=True)
class Silence:
    """One rule silenced on one line."""

    at: Position  # of the comment
    rule: str
    reason: str  # "" without a reason: then nothing is silenced
    line: int  # the line it applies to
