"""What is worked out about a tree before its page is written.

In: a tree and the library. Out: `Facts`: numbers, minutes, chances, options, the chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from markupsafe import Markup

from builder.model.library import Library
from builder.model.tree import Tree


@dataclass(frozen=True, slots=True)
class Facts:
    """All figures of one tree's page."""

    numbers: Mapping[str, int]
    chart: Markup
    minutes: Mapping[str, float] = field(default_factory=dict)  # expected, shortest, longest
    chances: Mapping[str, float] = field(default_factory=dict)  # of each step, 0 to 1
    options: Mapping[str, tuple[object, ...]] = field(default_factory=dict)  # of each fix


def facts_of(tree: Tree, library: Library) -> Facts:  # noqa: ARG001 - plan and chart come next
    """Work out everything that the page shows as a figure."""
    return Facts(numbers={id_: at for at, id_ in enumerate(tree.steps, start=1)}, chart=Markup())
