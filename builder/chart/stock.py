"""A flow with every word measured, so that a layout can be tried at many widths.

In: a `Flow`. Out: a `Stock` that breaks boxes and labels at any width and remembers what it broke.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from builder.chart.flow import Flow
from builder.chart.gaps import (
    ARROW,
    BESIDE,
    CONNECTOR_HEIGHT,
    INDENT,
    PAD_X,
    PAD_Y,
    ROUND_END,
    SMALL,
    TRUNK,
)
from builder.chart.measure import (
    Broken,
    Words,
    broken,
    height,
    label_words,
    line_width,
    node_words,
    words_of,
)

ROUNDED = frozenset({"start", "fix", "stop"})
Lines = tuple[Broken, float]  # broken lines and the height they take


@dataclass(frozen=True, slots=True)
class Stock:
    """The measured words of every box and every label."""

    flow: Flow
    boxes: Mapping[str, Words]
    labels: Mapping[tuple[str, int], Words]
    connectors: Mapping[str, float]  # width of the connector that bears the number of a node
    _boxes: dict[tuple[str, float], Lines] = field(default_factory=dict)
    _labels: dict[tuple[str, int, float], Lines] = field(default_factory=dict)

    def box(self, node: str, width: float) -> Lines:
        """Lines of a box of a given width, and the height of the box."""
        key = (node, width)
        found = self._boxes.get(key)
        if found is None:
            lines = broken(self.boxes[node], width - 2 * self.pad(node))
            found = self._boxes[key] = (lines, height(lines) + 2 * PAD_Y)
        return found

    def label(self, node: str, lead: int, width: float) -> Lines:
        """Lines and height of a label of at most a given width."""
        key = (node, lead, width)
        found = self._labels.get(key)
        if found is None:
            lines = broken(self.labels[node, lead], width)
            found = self._labels[key] = (lines, height(lines))
        return found

    def pad(self, node: str) -> float:
        """Room between the side of a box and its words."""
        return PAD_X + (ROUND_END if self.flow.nodes[node].kind in ROUNDED else 0)

    def target(self, node: str, lead: int) -> str:
        """Where a lead of a node goes."""
        return self.flow.edges[node][lead].target


def stock(flow: Flow, sheets: bool = False) -> Stock:
    """Measure every word of a flow; with `sheets`, connectors have room for a sheet's number."""
    more = words_of("sheet 88", SMALL, False) if sheets else ()
    return Stock(
        flow=flow,
        boxes={name: node_words(node) for name, node in flow.nodes.items()},
        labels={
            (step, lead): label_words(edge.label)
            for step, edges in flow.edges.items()
            for lead, edge in enumerate(edges)
        },
        connectors={
            name: max(
                line_width([*words_of(node.number or "?", SMALL, True), *more]) + 10,
                CONNECTOR_HEIGHT + 4,
            )
            for name, node in flow.nodes.items()
        },
    )


def least_box(stock: Stock) -> float:
    """Return the narrowest width in which every box that stands straight down holds its words."""
    return max((room for room, _ in _least(stock)), default=0)


def least_lane(stock: Stock) -> float:
    """Return the narrowest strip of results in which every box and label holds its words."""
    return max((room for _, room in _least(stock)), default=0)


def _least(stock: Stock) -> Iterator[tuple[float, float]]:
    for section in stock.flow.sections:
        for block in section.blocks:
            step = block.step
            yield _least_width(stock, step), 0
            if block.down is not None:
                yield TRUNK + _least_connector(stock, step, block.down), 0
            for side in block.sides:
                yield 0, BESIDE + stock.labels[step, side.lead].widest
                if not side.links:
                    yield 0, _least_connector(stock, step, side.lead)
                yield 0, max((INDENT + _least_width(stock, link.step) for link in side.links),
                             default=0)  # fmt: skip


def _least_width(stock: Stock, node: str) -> float:
    return stock.boxes[node].widest + 2 * stock.pad(node)


def _least_connector(stock: Stock, node: str, lead: int) -> float:
    pill = stock.connectors[stock.target(node, lead)]
    return BESIDE + stock.labels[node, lead].widest + ARROW + pill
