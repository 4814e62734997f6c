"""What a review says of a tree.

In: filled by the comparison. Out: `TreeReview`s, written as text, Markdown, JSON or HTML.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.chart.change_marks import ChangeMark


@dataclass(frozen=True, slots=True)
class Remark:
    """One change that the author made, or one effect of all changes of the tree."""

    kind: str  # such as `limit changed`
    step: str  # "" for the head of the tree
    message: str  # of an effect it names the step, too


@dataclass(frozen=True, slots=True)
class TreeReview:
    """Everything about one tree."""

    changes: tuple[Remark, ...]
    effects: tuple[Remark, ...]
    marks: Mapping[str, ChangeMark] = field(default_factory=dict)  # in its chart, by step
