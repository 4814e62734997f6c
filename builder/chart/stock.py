"""A flow with every word measured, so that a layout can be tried at many widths.

In: a `Flow`. Out: a `Stock` that breaks boxes and labels at any width and remembers what it broke.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from builder.chart.flow import Flow
from builder.chart.measure import (
    PAD_X,
    PAD_Y,
    ROUND_END,
    SMALL,
    Broken,
    Words,
    broken,
    height,
    label_words,
    node_words,
    words_of,
)
from builder.plan.outline import Block

ROUNDED = frozenset({"start", "fix", "stop"})
CONNECTOR_HEIGHT = 14.0


@dataclass(frozen=True, slots=True)
class Stock:
    """The measured words of every box and every label."""

    flow: Flow
    boxes: Mapping[str, Words]
    labels: Mapping[tuple[str, int], Words]
    connectors: Mapping[str, float]  # width of the connector that bears the number of a node
    _broken: dict[tuple[str, float], tuple[Broken, float]] = field(default_factory=dict)

    def box(self, node: str, width: float) -> tuple[Broken, float]:
        """Lines and height of a box of a given width."""
        key = (node, width)
        if key not in self._broken:
            lines = broken(self.boxes[node], width - 2 * self.pad(node))
            self._broken[key] = (lines, height(lines) + 2 * PAD_Y)
        return self._broken[key]

    def pad(self, node: str) -> float:
        """Room between the side of a box and its words."""
        return PAD_X + (ROUND_END if self.flow.nodes[node].kind in ROUNDED else 0)

    def label(self, node: str, lead: int, width: float) -> tuple[Broken, float]:
        """Lines and height of a label of at most a given width."""
        lines = broken(self.labels[node, lead], width)
        return lines, height(lines)

    def target(self, block: Block | str, lead: int) -> str:
        """Where a lead of a node goes."""
        step = block if isinstance(block, str) else block.step
        return self.flow.edges[step][lead].target


def stock(flow: Flow, sheets: bool = False) -> Stock:
    """Measure every word of a flow; with `sheets`, connectors have room for a sheet's number."""
    more = " sheet 88" if sheets else ""
    return Stock(
        flow=flow,
        boxes={name: node_words(node) for name, node in flow.nodes.items()},
        labels={
            (step, lead): label_words(edge.label)
            for step, edges in flow.edges.items()
            for lead, edge in enumerate(edges)
        },
        connectors={
            name: max(sum(w.width + w.space for w in words_of(node.number + more, SMALL, True)) + 9,
                      CONNECTOR_HEIGHT + 4)
            for name, node in flow.nodes.items()
        },
    )  # fmt: skip
