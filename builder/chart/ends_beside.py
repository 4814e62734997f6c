"""The last end of a section moved beside the check that leads to it.

In: a `Flow`. Out: a `Flow` in which no check runs straight down to an end: all that a check decides
stands at one place, and the result can stand inside the box of its end.
"""

from dataclasses import replace

from builder.chart.flow import Flow
from builder.chart.flow_metrics import ASKING, ENDS
from builder.plan.outline import ChainStep, OutlineBlock, OutlineSection, SideBranch


def ends_beside(flow: Flow) -> Flow:
    """Draw the end of every section as the last result of its check."""
    return replace(flow, sections=tuple(_beside(flow, section) for section in flow.sections))


def _beside(flow: Flow, section: OutlineSection) -> OutlineSection:
    if len(section.blocks) < 2:
        return section
    *first, before, last = section.blocks
    if before.down is None or last.sides:
        return section
    if flow.nodes[last.step].kind not in ENDS or flow.nodes[before.step].kind not in ASKING:
        return section
    side = SideBranch(before.down, (ChainStep(before.down, last.step),))
    return OutlineSection((*first, OutlineBlock(before.step, (*before.sides, side), None)))
