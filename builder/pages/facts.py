"""What is worked out about a tree before its page is written.

In: a tree and the library. Out: `Facts`: numbers, minutes, chances, options, the chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from markupsafe import Markup

from builder.chart.flow import flow_of
from builder.chart.layout import one_column
from builder.chart.svg import svg
from builder.model.library import Library
from builder.model.tree import Fix, Tree
from builder.pages import addresses
from builder.pages.page import root_of
from builder.plan.minutes import Minutes, minutes
from builder.plan.options import Option, options
from builder.wording.asked import in_plain_words


@dataclass(frozen=True, slots=True)
class Facts:
    """All figures of one tree's page."""

    numbers: Mapping[str, int]
    minutes: Minutes
    options: Mapping[str, tuple[Option, ...]]  # of each fix
    chart: Markup  # inline SVG, in which the chart room has escaped all text


def facts_of(tree: Tree, library: Library) -> Facts:
    """Work out everything that the page shows as a figure."""
    tree = in_plain_words(tree)
    flow = flow_of(tree, library)  # it knows the numbers, and they take a while to work out
    fixes = [step.id for step in tree.steps.values() if isinstance(step.body, Fix)]
    return Facts(
        numbers={id_: int(node.number) for id_, node in flow.nodes.items() if node.number},
        minutes=minutes(tree),
        options={str(id_): options(tree, id_, library) for id_ in fixes},
        chart=Markup(svg(one_column(flow), partial(_link, tree.id, library))),
    )


def _link(id_: str, library: Library, href: str) -> str:
    """Lead a symbol of the chart to its step, or to the tree that is handed over to."""
    other = href.removeprefix("tree:")
    if other == href:
        return href
    tree, _, step = other.partition("#")
    if tree not in library.trees:
        return ""
    anchor = addresses.step(step) if step else ""
    return root_of(addresses.tree(id_)) + addresses.link(addresses.tree(tree), anchor)
