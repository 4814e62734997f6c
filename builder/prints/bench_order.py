"""The order of the bench sheet: the way that most jobs take first, then the rest by section.

In: a `Flow`. Out: its steps in parts, each with its heading; every step stands in one of them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from builder.chart.flow import Flow

USUAL = "The way most jobs take"


@dataclass(frozen=True, slots=True)
class BenchPart:
    """Steps under one heading, in their order."""

    title: str
    steps: tuple[str, ...]


def bench_parts(flow: Flow) -> Iterator[BenchPart]:
    """Yield the usual way, then what is left of each section of the chart."""
    placed = list(usual_way(flow))
    yield BenchPart(USUAL, tuple(placed))
    for section in flow.sections:
        met = [block.step for block in section.blocks]
        met += [link.step for block in section.blocks for side in block.sides
                for link in side.chain]  # fmt: skip
        own = {step for step in met if flow.nodes[step].number}
        steps = tuple(sorted(own - set(placed), key=lambda step: int(flow.nodes[step].number)))
        placed += steps
        if steps:
            yield BenchPart(_title(flow, steps), steps)


def usual_way(flow: Flow) -> Iterator[str]:
    """Yield the steps that are met if every check has the result that most jobs have."""
    step = next((block.step for section in flow.sections for block in section.blocks), "")
    met: set[str] = set()
    while step and step not in met:
        met.add(step)
        if flow.nodes[step].number:
            yield step
        ways = [edge for edge in flow.edges.get(step, ()) if edge.target not in met]
        step = max(ways, key=lambda edge: edge.chance).target if ways else ""


def _title(flow: Flow, steps: Sequence[str]) -> str:
    """Name a part by its steps, and by those that lead to its first."""
    numbers = [flow.nodes[step].number for step in steps]
    leading = sorted({
        int(flow.nodes[edge.source].number)
        for out in flow.edges.values()
        for edge in out
        if edge.target == steps[0] and flow.nodes[edge.source].number
    })  # fmt: skip
    words = f"Steps {numbers[0]} to {numbers[-1]}" if len(numbers) > 1 else f"Step {numbers[0]}"
    return f"{words}, from {', '.join(map(str, leading))}" if leading else words
