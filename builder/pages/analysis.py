"""What is computed for a tree's page.

In: a tree and the library. Out: `TreeAnalysis`: step numbers, minutes, options, the chart.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from markupsafe import Markup

from builder.chart.flow import flow_of
from builder.chart.layout import one_column
from builder.chart.svg import svg
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.tree import Tree
from builder.pages import addresses
from builder.plan.chances import walk_chances
from builder.plan.estimate_options import EstimateOption, estimate_options
from builder.plan.forward_graph import forward_graph
from builder.plan.minutes import TreeMinutes, tree_minutes
from builder.wording.placeholders import in_plain_words


@dataclass(frozen=True, slots=True)
class TreeAnalysis:
    """The computed parts of one tree's page."""

    numbers: Mapping[str, int]  # of each step
    minutes: TreeMinutes
    options: Mapping[str, tuple[EstimateOption, ...]]  # of each fix
    chart: Markup  # inline SVG; the chart room has escaped all text in it


def analyze_tree(tree: Tree, library: Library) -> TreeAnalysis:
    """Compute numbers, minutes, options and the chart of a tree."""
    tree = in_plain_words(tree)
    graph = forward_graph(tree)
    chances = walk_chances(tree, graph)
    flow = flow_of(tree, library, chances=chances)  # has the numbers already
    fixes = [step.id for step in tree.steps.values() if isinstance(step.body, Fix)]
    return TreeAnalysis(
        numbers=flow.numbers,
        minutes=tree_minutes(tree, graph, chances),
        options={str(id_): estimate_options(tree, id_, library) for id_ in fixes},
        chart=Markup(svg(one_column(flow), partial(_chart_href, tree, library))),
    )


def _chart_href(here: Tree, library: Library, href: str) -> str:
    """Link a symbol of the chart to its step, or to the tree that takes over the job."""
    other = href.removeprefix("tree:")
    if other == href:
        return href
    tree, _, step = other.partition("#")
    if tree not in library.trees:
        return ""
    anchor = addresses.step_anchor(step) if step else ""
    return addresses.href(addresses.page_of(here), addresses.tree_path(tree), anchor)
