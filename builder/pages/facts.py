"""What is worked out about a tree before its page is written.

In: a tree and the library. Out: `Facts`: numbers, minutes, chances, options, the chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from markupsafe import Markup

from builder.chart.layout import page_chart
from builder.chart.svg import svg
from builder.model.library import Library
from builder.model.tree import Tree
from builder.plan.numbering import numbering


@dataclass(frozen=True, slots=True)
class Facts:
    """All figures of one tree's page."""

    numbers: Mapping[str, int]
    chart: Markup  # inline SVG, in which the chart room has escaped all text
    minutes: Mapping[str, float] = field(default_factory=dict)  # expected, shortest, longest
    chances: Mapping[str, float] = field(default_factory=dict)  # of each step, 0 to 1


def facts_of(tree: Tree, library: Library) -> Facts:
    """Work out everything that the page shows as a figure."""
    return Facts(numbers=numbering(tree), chart=Markup(svg(page_chart(tree, library))))
