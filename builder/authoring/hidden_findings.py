"""Which mistakes keep the check from finding others.

In: findings, and the lines of their file. Out: the stage of a finding, and whether one may have
hidden another: then the other one isn't new when it shows up, it was only not seen.
"""

from collections.abc import Sequence
from enum import IntEnum

from builder.model.finding import Finding

YAML_RULES = frozenset((
    "alias", "depth", "documents", "duplicate-key", "encoding", "lost-text", "merge-conflict",
    "syntax", "tab", "tag",
))  # fmt: skip
FORMAT_RULES = frozenset((
    "bad-value", "missing-key", "old-format", "unknown-key", "wrong-type",
))  # fmt: skip
ENTRY = 2  # columns: what starts further right belongs to the step or the entry above it


class Stage(IntEnum):
    """What is read first, and hides what is found later."""

    YAML = 0  # hides every slip of the format below it
    FORMAT = 1  # hides what the rules find
    RULES = 2


def stage_of(finding: Finding) -> Stage:
    """Return the stage at which a finding is made."""
    if finding.rule in YAML_RULES:
        return Stage.YAML
    return Stage.FORMAT if finding.rule in FORMAT_RULES else Stage.RULES


def entry_line(lines: Sequence[str], line: int) -> int:
    """Return the line on which the step or the entry of a line starts; 0 if there is none."""
    starts = (at for at in range(min(line, len(lines)), 0, -1) if _starts_entry(lines[at - 1]))
    return next(starts, 0)


def _starts_entry(line: str) -> bool:
    words = line.lstrip()
    return bool(words) and words[0] != "#" and len(line) - len(words) <= ENTRY


def was_hidden(lines: Sequence[str], other: Finding, by: Finding) -> bool:
    """Whether a finding was hidden by one that is gone, rather than made by its edit.

    In doubt it was made: then it stands in the lines of the edit, or beside them in the same entry.
    One that has an edit itself isn't in doubt, since it can be put right next.
    """
    new_lines = by.edit.new.count("\n") if by.edit else 0
    same_line = by.at.line <= other.at.line <= by.at.line + new_lines
    same_entry = entry_line(lines, by.at.line) == entry_line(lines, other.at.line)
    match stage_of(by), stage_of(other):
        case Stage.YAML, Stage.YAML:
            return other.edit is not None and not same_line
        case Stage.YAML, Stage.FORMAT:
            return other.edit is not None or not same_entry
        case Stage.FORMAT, Stage.FORMAT:
            return same_entry and (other.edit is not None or not same_line)
        case first, then:
            return first < then
