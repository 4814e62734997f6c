"""A flow with every word measured, so that a layout can be tried at many widths.

In: a `Flow`. Out: `FlowMetrics`: the height of any box or label at any width, then its lines.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass

from builder.chart.flow import Edge, Flow
from builder.chart.measured_word import WordLine, line_width, measured_words
from builder.chart.spacing import (
    ARROW,
    BESIDE,
    CONNECTOR_HEIGHT,
    DOUBLE_SIDE,
    INDENT,
    NARROW,
    PAD_X,
    PAD_Y,
    ROUND_END,
    SMALL,
    TRUNK,
)
from builder.chart.text_block import TextBlock, box_text, label_text
from builder.plan.outline import OutlineBlock
from builder.wording.results import NO_BREAK

ASKING = frozenset({"check", "run"})  # their results leave by a diamond
ROUNDED = frozenset({"start", "fix", "stop", "return"})
DOUBLE = frozenset({"handoff", "run"})
ENDS = frozenset({"fix", "stop", "return", "handoff"})
WIDEST_SHEET = 40  # no number of two digits is wider


@dataclass(frozen=True, slots=True)
class FlowMetrics:
    """The measured words of every box and every label."""

    flow: Flow
    boxes: Mapping[str, TextBlock]
    # Of a node's leads, in their order: the box they lead to with the result inside it, or None
    # where that has its place beside the line.
    inside: Mapping[str, tuple[TextBlock | None, ...]]
    pads: Mapping[str, float]  # from the side of a box to its words
    labels: Mapping[str, tuple[TextBlock, ...]]  # of a node's leads, in their order
    connectors: Mapping[str, float]  # width of the connector that bears the number of a node

    def box_height(self, node: str, width: float) -> float:
        """Height of a box of a given width."""
        return self.boxes[node].height(width - 2 * self.pads[node]) + 2 * PAD_Y

    def inside_height(self, node: str, lead: int, width: float) -> float | None:
        """Height of the box a lead leads to with the result inside it; None if it has none."""
        words = self.inside[node][lead]
        room = width - 2 * self.pads[self.target(node, lead)]
        return words.height(room) + 2 * PAD_Y if words else None

    def target(self, node: str, lead: int) -> str:
        """Where a lead of a node goes."""
        return self.flow.edges[node][lead].target


Jump = tuple[str, str]  # a box, and the number of a step that its words send the reader to


def flow_metrics(flow: Flow, sheets: bool = False, elsewhere: Container[Jump] = ()) -> FlowMetrics:
    """Measure every word of a flow.

    With `sheets`, every connector has room for the number of a sheet, and so have the jumps that go
    elsewhere.
    """
    more = measured_words(sheet_reference(WIDEST_SHEET), SMALL) if sheets else ()

    def words_in(name: str, result: Edge | None = None) -> TextBlock:
        def sheet_of(to: str) -> str:
            return sheet_reference(WIDEST_SHEET) if (name, to) in elsewhere else ""

        return box_text(flow.nodes[name], sheet_of, result)

    def inside(edge: Edge) -> TextBlock | None:
        return words_in(edge.target, edge) if stands_inside(flow, edge) else None

    return FlowMetrics(
        flow=flow,
        boxes={name: words_in(name) for name in flow.nodes},
        inside={step: tuple(map(inside, edges)) for step, edges in flow.edges.items()},
        pads={name: _pad(node.kind) for name, node in flow.nodes.items()},
        labels={step: tuple(map(label_text, edges)) for step, edges in flow.edges.items()},
        connectors={
            name: connector_width([*measured_words(node.number or "?", SMALL, True), *more])
            for name, node in flow.nodes.items()
        },
    )


def connector_width(words: WordLine) -> float:
    """Width of a connector that bears these words."""
    return max(line_width(words) + 10, CONNECTOR_HEIGHT + 4)


def stands_inside(flow: Flow, edge: Edge) -> bool:
    """Whether a result can stand inside the box it leads to: an end without a caution.

    A caution comes first in its box, and a result does not stand after it.
    """
    node = flow.nodes[edge.target]
    return bool(edge.label) and node.kind in ENDS and not node.caution


def sheet_reference(sheet: int) -> str:
    """Name a sheet beside the number of a step."""
    return f"sheet{NO_BREAK}{sheet}"


def _pad(kind: str) -> float:
    return PAD_X + (ROUND_END if kind in ROUNDED else DOUBLE_SIDE if kind in DOUBLE else 0)


def narrowest_rooms(metrics: FlowMetrics) -> tuple[float, float]:
    """Return the narrowest rooms in which everything holds its words.

    The first is that of the boxes that stand straight down, the second that of the strip of results
    with its boxes and labels.
    """
    blocks = [block for section in metrics.flow.sections for block in section.blocks]
    boxes = [width for block in blocks for width in _least_boxes(metrics, block)]
    lanes = [width for block in blocks for width in _least_lanes(metrics, block)]
    return max([NARROW, *boxes]), max(lanes, default=0.0)


def _least_boxes(metrics: FlowMetrics, block: OutlineBlock) -> Iterator[float]:
    yield _least_width(metrics, block.step)
    if block.down is not None:
        yield TRUNK + _least_connector(metrics, block.step, block.down)


def _least_lanes(metrics: FlowMetrics, block: OutlineBlock) -> Iterator[float]:
    step = block.step
    for side in block.sides:
        yield BESIDE + metrics.labels[step][side.edge_index].widest
        if not side.chain:
            yield _least_connector(metrics, step, side.edge_index)
        words = metrics.inside[step][side.edge_index]
        if words and side.chain:
            yield INDENT + words.widest + 2 * metrics.pads[side.chain[0].step]
        for link in side.chain:
            yield INDENT + _least_width(metrics, link.step)
            yield 2 * INDENT + 2 * BESIDE + _widest_label(metrics, link.step)


def _widest_label(metrics: FlowMetrics, node: str) -> float:
    return max((label.widest for label in metrics.labels.get(node, ())), default=0.0)


def _least_width(metrics: FlowMetrics, node: str) -> float:
    return metrics.boxes[node].widest + 2 * metrics.pads[node]


def _least_connector(metrics: FlowMetrics, node: str, lead: int) -> float:
    pill = metrics.connectors[metrics.target(node, lead)]
    return BESIDE + metrics.labels[node][lead].widest + ARROW + 1 + pill
