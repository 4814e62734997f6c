"""The reading order of a graph of steps: sections that run straight down, and side branches.

In: where each step leads and how often. Out: `OutlineSection`s, the one order that numbers, charts
and lists share.

A section follows the heaviest edge (by weight, then by the longest path) from step to step. A
branch off it is drawn beside it if it ends there (a fix, or a few actions up to one). A branch that
goes on to more checks starts its own section after this one; sections come in the order met. Each
step has one place only, and every other edge to it is a connector. Only ends are repeated.
"""

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

LONGEST_CHAIN = 3  # steps drawn beside a section; a longer branch gets a section of its own


@dataclass(frozen=True, slots=True)
class OutlineEdge:
    """One edge from a step to another, and its share of all walks."""

    target: str
    weight: Fraction | float = 0


@dataclass(frozen=True, slots=True)
class ChainStep:
    """A step drawn beside a section, and which edge of the step before it leads there."""

    edge_index: int
    step: str


@dataclass(frozen=True, slots=True)
class SideBranch:
    """An edge that leaves the section, and the steps drawn at its end; a connector if none."""

    edge_index: int
    chain: tuple[ChainStep, ...] = ()


@dataclass(frozen=True, slots=True)
class OutlineBlock:
    """A step of a section, its side branches, and the edge to the section's next step."""

    step: str
    sides: tuple[SideBranch, ...]
    down: int | None


@dataclass(frozen=True, slots=True)
class OutlineSection:
    """Steps that run straight down from a first step."""

    blocks: tuple[OutlineBlock, ...]


@dataclass(frozen=True, slots=True)
class StepGraph:
    """A graph to put in order: the first step, the edges, and the kinds that matter."""

    start: str
    edges: Mapping[str, Sequence[OutlineEdge]]
    ends: Collection[str]  # steps that lead nowhere; drawn again at every edge to them
    checks: Collection[str]  # steps that are never drawn beside a section
    # Where the first result that fits counts, the section runs on at the last of them or not at
    # all, so that all are read in their order: the index of that edge.
    ordered: Mapping[str, int] = field(default_factory=dict)


def outline(graph: StepGraph) -> tuple[OutlineSection, ...]:
    """Put every step in reading order; unreachable steps come last, in the order of the graph."""
    lengths = _longest_paths(graph)
    placed: set[str] = set()
    sections: list[OutlineSection] = []
    for start in (graph.start, *graph.edges):
        stack = [start]
        while stack:
            head = stack.pop()
            if head in placed:
                continue
            section, heads = _section(head, graph, lengths, placed)
            sections.append(section)
            stack += reversed(heads)
    return tuple(sections)


def reading_order(sections: Iterable[OutlineSection]) -> Iterator[str]:
    """Yield the steps as they are read: side branches before the next step down."""
    for section in sections:
        for block in section.blocks:
            yield block.step
            for side in block.sides:
                yield from (link.step for link in side.chain)


def _section(
    head: str, graph: StepGraph, lengths: Mapping[str, int], placed: set[str]
) -> tuple[OutlineSection, list[str]]:
    """Return a section, and where the heads of the next are; some may have their place by then."""
    spine = list(_spine(head, graph, lengths, placed))
    blocks: list[OutlineBlock] = []
    heads: list[str] = []
    for step, down in spine:
        sides: list[SideBranch] = []
        for index, edge in enumerate(graph.edges[step]):
            if index == down:
                continue
            side = SideBranch(index, _chain(index, edge.target, graph, placed) or ())
            placed.update(link.step for link in side.chain)
            sides.append(side)
            if not side.chain:
                heads.append(edge.target)
        blocks.append(OutlineBlock(step, tuple(sides), down))
    return OutlineSection(tuple(blocks)), heads


def _spine(
    head: str, graph: StepGraph, lengths: Mapping[str, int], placed: set[str]
) -> Iterator[tuple[str, int | None]]:
    step: str | None = head
    while step is not None:
        repeated = step in placed  # only an end is drawn again, and it ends its section
        placed.add(step)
        down = None if repeated else _edge_down(step, graph, lengths, placed)
        yield step, down
        step = None if down is None else graph.edges[step][down].target


def _edge_down(
    step: str, graph: StepGraph, lengths: Mapping[str, int], placed: set[str]
) -> int | None:
    continuing: list[int] = []
    ending: list[int] = []
    edges = graph.edges[step]
    for index, edge in enumerate(edges):
        if graph.ordered.get(step, index) != index:
            continue
        if _chain(index, edge.target, graph, placed):
            ending.append(index)
        elif edge.target not in placed:
            continuing.append(index)
    return max(
        continuing or ending,
        key=lambda index: (edges[index].weight, lengths[edges[index].target], -index),
        default=None,
    )


def _chain(
    index: int, target: str, graph: StepGraph, placed: set[str]
) -> tuple[ChainStep, ...] | None:
    """Return the steps drawn beside a section, or None if the branch needs a section or exists."""
    chain: list[ChainStep] = []
    while len(chain) < LONGEST_CHAIN:
        if target in graph.ends:
            return (*chain, ChainStep(index, target))
        if target in placed or target in graph.checks:
            return None
        chain.append(ChainStep(index, target))
        seen = placed | {link.step for link in chain}
        open_edges = [
            (number, edge.target)
            for number, edge in enumerate(graph.edges[target])
            if edge.target in graph.ends or edge.target not in seen
        ]
        if not open_edges:
            return tuple(chain)
        if len(open_edges) > 1:
            return None
        index, target = open_edges[0]
    return None


def _longest_paths(graph: StepGraph) -> dict[str, int]:
    """Count the steps on the longest path from each step, without edges that close a loop."""
    lengths: dict[str, int] = {}
    on_path: set[str] = set()
    for start in (graph.start, *graph.edges):
        stack = [start]
        while stack:
            step = stack[-1]
            targets = [edge.target for edge in graph.edges[step]]
            todo = [t for t in targets if t not in lengths and t not in on_path and t != step]
            if step not in lengths and todo:
                on_path.add(step)
                stack.append(todo[0])
                continue
            stack.pop()
            on_path.discard(step)
            known = [lengths[target] for target in targets if target in lengths]
            lengths.setdefault(step, 1 + max(known, default=0))
    return lengths
