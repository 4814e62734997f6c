"""Checks with many results split, so that large text still fits a sheet.

In: a `Flow` and how many results a box may keep beside it. Out: a `Flow` in which every check with
more goes on in a second box of the same number.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.chart.flow import Edge, Flow, Node
from builder.plan.outline import OutlineBlock, OutlineSection

OTHER_RESULTS = "other results"  # the words on the way to the second box


def split_checks(flow: Flow, most: int) -> Flow:
    """Part every block with more than `most` results beside it."""
    nodes, edges = dict(flow.nodes), dict(flow.edges)
    sections = []
    for section in flow.sections:
        parts = [part for block in section.blocks for part in _parts(block, most, nodes, edges)]
        sections.append(OutlineSection(tuple(parts)))
    return replace(flow, nodes=nodes, edges=edges, sections=tuple(sections))


def _parts(
    block: OutlineBlock, most: int, nodes: dict[str, Node], edges: dict[str, tuple[Edge, ...]]
) -> Iterator[OutlineBlock]:
    """Yield a block in parts, and add the boxes and lines that they need."""
    step = block.step
    while len(block.sides) > most:
        name = f"{block.step}+"
        more = Node(name, nodes[step].kind, "goes on", nodes[step].number, href=nodes[step].href)
        nodes[name] = more
        edges[name] = edges[block.step]
        way = len(edges[block.step])
        edges[block.step] = (*edges[block.step], Edge(block.step, name, OTHER_RESULTS))
        yield OutlineBlock(block.step, block.sides[:most], way)
        block = OutlineBlock(name, block.sides[most:], block.down)
    yield block
