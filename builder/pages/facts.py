"""What is worked out about a tree before its page is written.

In: a tree and the library. Out: `Facts`: numbers, minutes, chances, options, the chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from builder.chart.layout import page_chart
from builder.chart.svg import svg
from builder.model.library import Library
from builder.model.tree import Fix, Tree
from builder.plan.minutes import Minutes, minutes
from builder.plan.numbering import numbering
from builder.plan.options import Option, options


@dataclass(frozen=True, slots=True)
class Facts:
    """All figures of one tree's page."""

    numbers: Mapping[str, int]
    minutes: Minutes
    options: Mapping[str, tuple[Option, ...]]  # of each fix
    chart: Markup  # inline SVG, in which the chart room has escaped all text


def facts_of(tree: Tree, library: Library) -> Facts:
    """Work out everything that the page shows as a figure."""
    fixes = [step.id for step in tree.steps.values() if isinstance(step.body, Fix)]
    return Facts(
        numbers=numbering(tree),
        minutes=minutes(tree),
        options={str(id_): options(tree, id_, library) for id_ in fixes},
        chart=Markup(svg(page_chart(tree, library))),
    )
