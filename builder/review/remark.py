"""What a review says of a tree.

In: filled by the comparison. Out: `TreeReview`s, written as text, Markdown, JSON or HTML.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.chart.change_marks import ChangeMark

AS_IT_WAS = "The file is as it was; what it uses of `kb/` changed."
NOTHING = "No tree says anything else than before."
LONGEST = 60  # characters of an author's words in a message


def in_code(words: str) -> str:
    """Put an author's words into backquotes, which they can't leave; long ones are cut."""
    kept = words if len(words) <= LONGEST else f"{words[: LONGEST - 1]}…"
    return "`" + kept.replace("`", "'") + "`"


@dataclass(frozen=True, slots=True)
class Remark:
    """One change that the author made, or one effect of all changes of the tree."""

    kind: str  # such as `limit changed`
    step: str  # "" for the head of the tree
    message: str  # of an effect it names the step, too


@dataclass(frozen=True, slots=True)
class TreeReview:
    """Everything about one tree; without a change, what it uses of the knowledge changed."""

    changes: tuple[Remark, ...]
    effects: tuple[Remark, ...]
    marks: Mapping[str, ChangeMark] = field(default_factory=dict)  # in its chart, by step
