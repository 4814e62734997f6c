"""An end that several results lead to, drawn in full once where repeating it costs much room.

In: a `Flow` for one sheet. Out: a `Flow` in which every result but the first leads to such an end
by its number: a look across the sheet costs the reader less than small text.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.chart.flow import Flow
from builder.plan.outline import OutlineBlock, OutlineSection, SideBranch

CROWDED = 30  # boxes: with no more, a large sheet reads from 0.7 m (over the trees of the demo)
MOSTLY_NEW = 0.8  # of all boxes: with more of them repeated, a sheet says little for its size


def ends_once(flow: Flow) -> Flow:
    """Draw each end where it's first led to; a tree handed off to has no number, and stays."""
    boxes = list(_boxes(flow))
    if len(boxes) <= CROWDED and len(set(boxes)) >= MOSTLY_NEW * len(boxes):
        return flow
    seen: set[str] = set()
    again: set[str] = set()

    def once(side: SideBranch) -> SideBranch:
        if len(side.chain) != 1 or not flow.nodes[side.chain[0].step].number:
            return side
        end = side.chain[0].step
        if end not in seen:
            seen.add(end)
            return side
        again.add(end)
        return replace(side, chain=())

    def block_once(block: OutlineBlock) -> OutlineBlock:
        return replace(block, sides=tuple(map(once, block.sides)))

    sections = tuple(
        OutlineSection(tuple(map(block_once, section.blocks))) for section in flow.sections
    )
    nodes = {
        name: replace(node, led_to=True) if name in again else node
        for name, node in flow.nodes.items()
    }
    return replace(flow, nodes=nodes, sections=sections)


def _boxes(flow: Flow) -> Iterator[str]:
    for block in (block for section in flow.sections for block in section.blocks):
        yield block.step
        yield from (link.step for side in block.sides for link in side.chain)
