"""What a check has put right in the files of authors.

In: findings with an edit, and the texts of their files. Out: the corrections of each file, and its
text before and after.
"""

from dataclasses import dataclass

from builder.model.finding import Finding


@dataclass(frozen=True, slots=True)
class Correction:
    """One finding that is put right."""

    finding: Finding  # as it was
    line: int  # of the corrected file
    now: str  # that line as it reads now, without the space around it


@dataclass(frozen=True, slots=True)
class CorrectedFile:
    """A file with its mistakes put right, as far as that leaves no choice."""

    file: str  # relative to the shop
    before: str
    after: str
    corrections: tuple[Correction, ...]  # in the order of the lines
