"""What a review marks in a chart: by a word in the box, and by a bar beside it.

In: a `Flow`, and for each changed step its `ChangeMark`. Out: the flow with the words in its boxes
and beside its results. Without color, the words and the bars say the same.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from builder.chart.flow import Edge, Flow

NEW = "NEW"


@dataclass(frozen=True, slots=True)
class ChangeMark:
    """What changed at a step."""

    word: str  # in its box: `NEW`, or `CHANGED: minutes`
    results: tuple[str, ...] = ()  # beside each result, in the order of the check; "" as before


def with_changes(flow: Flow, marks: Mapping[str, ChangeMark]) -> Flow:
    """Mark what changed."""
    nodes = {
        name: replace(node, change=marks[name].word) if name in marks else node
        for name, node in flow.nodes.items()
    }
    edges = {
        name: tuple(_marked(edge, marks[name].results) for edge in out) if name in marks else out
        for name, out in flow.edges.items()
    }
    return replace(flow, nodes=nodes, edges=edges)


def _marked(edge: Edge, results: tuple[str, ...]) -> Edge:
    if edge.result is None or edge.result >= len(results):
        return edge
    return replace(edge, change=results[edge.result])
