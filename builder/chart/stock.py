"""A flow with every word measured, so that a layout can be tried at many widths.

In: a `Flow`. Out: a `Stock` that gives the height of any box or label at any width, then its lines.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass

from builder.chart.flow import Flow, Node
from builder.chart.gaps import (
    ARROW,
    BESIDE,
    CONNECTOR_HEIGHT,
    DOUBLE_SIDE,
    INDENT,
    PAD_X,
    PAD_Y,
    ROUND_END,
    SMALL,
    TRUNK,
)
from builder.chart.measure import Words, label_words, node_words
from builder.chart.word import line_width, words_of
from builder.wording.results import NO_BREAK

ROUNDED = frozenset({"start", "fix", "stop"})


@dataclass(frozen=True, slots=True)
class Stock:
    """The measured words of every box and every label."""

    flow: Flow
    boxes: Mapping[str, Words]
    pads: Mapping[str, float]  # from the side of a box to its words
    labels: Mapping[str, tuple[Words, ...]]  # of a node's leads, in their order
    connectors: Mapping[str, float]  # width of the connector that bears the number of a node

    def box_height(self, node: str, width: float) -> float:
        """Height of a box of a given width."""
        return self.boxes[node].height(width - 2 * self.pads[node]) + 2 * PAD_Y

    def target(self, node: str, lead: int) -> str:
        """Where a lead of a node goes."""
        return self.flow.edges[node][lead].target


Jump = tuple[str, str]  # a box, and the number of a step that its words send the reader to


def stock(flow: Flow, sheets: bool = False, elsewhere: Container[Jump] = ()) -> Stock:
    """Measure every word of a flow.

    With `sheets`, every connector has room for the number of a sheet, and so have the jumps that go
    elsewhere.
    """
    more = words_of(sheet_words(88), SMALL) if sheets else ()

    def words_in(name: str, node: Node) -> Words:
        return node_words(node, lambda to: sheet_words(88) if (name, to) in elsewhere else "")

    return Stock(
        flow=flow,
        boxes={name: words_in(name, node) for name, node in flow.nodes.items()},
        pads={name: _pad(node.kind) for name, node in flow.nodes.items()},
        labels={step: tuple(map(label_words, edges)) for step, edges in flow.edges.items()},
        connectors={
            name: max(
                line_width([*words_of(node.number or "?", SMALL, True), *more]) + 10,
                CONNECTOR_HEIGHT + 4,
            )
            for name, node in flow.nodes.items()
        },
    )


def sheet_words(sheet: int) -> str:
    """Name a sheet beside the number of a step."""
    return f"sheet{NO_BREAK}{sheet}"


def _pad(kind: str) -> float:
    return PAD_X + (ROUND_END if kind in ROUNDED else DOUBLE_SIDE if kind == "hand-over" else 0)


def least_rooms(stock: Stock) -> tuple[float, float]:
    """Return the narrowest rooms in which everything holds its words.

    The first is that of the boxes that stand straight down, the second that of the strip of results
    with its boxes and labels.
    """
    boxes, lanes = zip((0.0, 0.0), *_least(stock), strict=True)
    return max(boxes), max(lanes)


def _least(stock: Stock) -> Iterator[tuple[float, float]]:
    for section in stock.flow.sections:
        for block in section.blocks:
            step = block.step
            yield _least_width(stock, step), 0
            if block.down is not None:
                yield TRUNK + _least_connector(stock, step, block.down), 0
            for side in block.sides:
                yield 0, BESIDE + stock.labels[step][side.lead].widest
                if not side.links:
                    yield 0, _least_connector(stock, step, side.lead)
                for link in side.links:
                    yield 0, INDENT + _least_width(stock, link.step)
                    yield 0, 2 * INDENT + 2 * BESIDE + _widest_label(stock, link.step)


def _widest_label(stock: Stock, node: str) -> float:
    return max((label.widest for label in stock.labels.get(node, ())), default=0)


def _least_width(stock: Stock, node: str) -> float:
    return stock.boxes[node].widest + 2 * stock.pads[node]


def _least_connector(stock: Stock, node: str, lead: int) -> float:
    pill = stock.connectors[stock.target(node, lead)]
    return BESIDE + stock.labels[node][lead].widest + ARROW + pill
