"""Results of one check that lead to the same step, drawn as one.

In: a `Flow`. Out: a `Flow` in which their words stand together before one end or connector. Where
the first result that fits counts, only neighbors are joined.
"""

from collections.abc import Sequence
from dataclasses import replace

from builder.chart.flow import Edge, Flow
from builder.plan.outline import OutlineBlock, OutlineSection, SideBranch

JOINED = 60  # letters: a longer row of results is hard to read


def results_joined(flow: Flow) -> Flow:
    """Join what leads from one check to the same end, or on by the same connector."""
    edges = dict(flow.edges)
    sections = [
        OutlineSection(tuple(_joined(flow, block, edges) for block in section.blocks))
        for section in flow.sections
    ]
    return replace(flow, edges=edges, sections=tuple(sections))


def _joined(flow: Flow, block: OutlineBlock, edges: dict[str, tuple[Edge, ...]]) -> OutlineBlock:
    if block.step not in edges:
        return block  # a handoff at the end of the column: nothing leads on from it
    out = list(edges[block.step])
    in_order = flow.nodes[block.step].in_order
    kept: list[SideBranch] = []
    for side in block.sides:
        drawn = [SideBranch(block.down)] if block.down is not None else []
        with_ = _same_way(kept[-1:] if in_order else [*kept, *drawn], side, out)
        if with_ is None:
            kept.append(side)
        else:
            label = f"{out[with_].label} or {out[side.edge_index].label}"
            out[with_] = replace(out[with_], label=label)
    edges[block.step] = tuple(out)
    return replace(block, sides=tuple(kept))


def _same_way(drawn: Sequence[SideBranch], side: SideBranch, out: Sequence[Edge]) -> int | None:
    """Return the edge that leads where a side does and whose words are few enough to be joined."""
    edge = out[side.edge_index]
    for other in drawn:
        one = out[other.edge_index]
        alike = one.target == edge.target and len(other.chain) == len(side.chain)
        more = edge.means or one.means or edge.change or one.change
        named = edge.label and one.label and not more
        if alike and named and len(edge.label) + len(one.label) <= JOINED:
            return other.edge_index
    return None
