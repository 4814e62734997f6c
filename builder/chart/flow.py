"""What a chart shows: nodes with their words, labeled edges, and the order they are read in.

In: a `Tree`, and the `Library` for signal words and the titles of other trees. Out: a `Flow`, all
that the layout knows. Graphs that are not trees of a shop can be laid out by making a `Flow`.
"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from builder.chart.begun_state import begun_state
from builder.chart.hazard_marks import HazardMark, hazards_of
from builder.chart.undrawn_ways import (
    NumberedTree,
    handoff_title,
    spent_words,
    steps_named_in_notes,
    way_notes,
)
from builder.graph.routes import ExitKind
from builder.model.checks import Branch, Check
from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.text import Number
from builder.model.tree import Step, Tree
from builder.plan.chances import WalkChances
from builder.plan.numbering import ChartLine, chart_lines, number_sections, tree_outline
from builder.plan.outline import ChainStep, OutlineBlock, OutlineSection
from builder.wording.results import NO_BREAK, result_words, tied
from builder.wording.sentences import uncapitalized
from builder.wording.vehicle_words import part_name

ORIGINS = 3  # steps that the head of a section names; more tell nobody more
NO_MARKS: Mapping[str, HazardMark] = {}
START = "start:"  # the id of the start terminator; no step id has a colon


@dataclass(frozen=True, slots=True)
class Node:
    """One symbol: its words, and where a reader who wants more is sent."""

    id: str
    kind: str  # start, check, run (a check by a procedure), action, fix, stop, return, handoff
    text: str
    number: str = ""
    notes: tuple[str, ...] = ()  # "still there: go to 3"
    ways_on: tuple[str, ...] = ()  # "then go to 3", where no connector stands after the box
    when: tuple[str, ...] = ()  # the states of the vehicle in which it begins
    place: str = ""  # where it's done, in words
    work: str = ""  # "work 3 min": kept apart from the instruction
    facts: tuple[str, ...] = ()  # "wait 60 min", "from 3"
    caution: Signal | None = None  # the most severe
    hazards: tuple[str, ...] = ()  # their short names, most severe first
    marks: tuple[HazardMark, ...] = ()  # their signs, where a key explains them
    href: str = ""
    in_order: bool = False  # whether the first of its results that fits counts
    led_to: bool = False  # an end that other results lead to by its number
    change: str = ""  # what a review says of it: `NEW`, `CHANGED: minutes`


@dataclass(frozen=True, slots=True)
class Edge:
    """A line, the words beside it and how often it is taken."""

    source: str
    target: str
    label: str = ""
    means: str = ""  # what the result means, in lighter type
    chance: float = 0
    result: int | None = None  # which result of its check it is, from 0
    change: str = ""  # what a review says of that result: `was below 13.2`


Edges = Mapping[str, tuple[Edge, ...]]


@dataclass(frozen=True, slots=True)
class Flow:
    """A chart before it has a place; `edges` of a node are in the order the outline counts."""

    title: str
    nodes: Mapping[str, Node]
    edges: Edges
    sections: tuple[OutlineSection, ...]
    arrivals: frozenset[str] = field(default_factory=frozenset)  # nodes that are reached by number

    @property
    def numbers(self) -> dict[str, int]:
        """The number of each step."""
        return {name: int(node.number) for name, node in self.nodes.items() if node.number}


def flow_of(
    tree: Tree,
    library: Library | None = None,
    marks: Mapping[str, HazardMark] = NO_MARKS,
    chances: WalkChances | None = None,
) -> Flow:
    """Turn a tree into what its chart shows; `marks`: signs of hazards that a key explains."""
    drawn = chart_lines(tree, chances)
    sections = tree_outline(tree, drawn)
    at = NumberedTree(tree, number_sections(tree, sections), drawn, library, marks)
    nodes = {str(name): _node(at, step) for name, step in tree.steps.items()} | _handoffs(at)
    edges = {
        step: tuple(_edge(at, tree.steps[step], line) for line in out)
        for step, out in drawn.items()
    }
    reached = nodes_reached_by_number(edges, sections) | steps_named_in_notes(at)
    flow = Flow(str(tree.title), nodes, edges, sections, reached)
    return _with_start(_with_origins(_with_ways_on(flow)))


def _node(at: NumberedTree, step: Step) -> Node:
    met = hazards_of(step, at.library) if at.library else []
    return Node(
        id=str(step.id),
        kind=_kind(step),
        text=f"Return: {tied(step.text)}" if step.kind == "return" else tied(step.text),
        number=str(at.numbers[step.id]),
        notes=tuple(way_notes(at, step)),
        when=begun_state(step, at.library) if at.library else tuple(map(tied, step.when)),
        place=tied(uncapitalized(step.where.phrase)) if step.where and step.where.phrase else "",
        work=_minutes("work", step.minutes),
        facts=(*_run_facts(at, step), *filter(None, [_minutes("wait", step.wait)])),
        caution=met[0].signal if met else None,
        hazards=tuple(hazard.short for hazard in met),
        marks=tuple(at.marks[hazard.id] for hazard in met if hazard.id in at.marks),
        href=f"#step-{step.id}",
        in_order=isinstance(step.body, Check) and step.body.several,
    )


def _kind(step: Step) -> str:
    return "run" if isinstance(step.body, Check) and step.body.by else step.kind


def _run_facts(at: NumberedTree, step: Step) -> Iterator[str]:
    """Yield the procedure that finds the result, and what it is run on."""
    if isinstance(step.body, Check) and step.body.by:
        yield f"procedure {step.body.by.replace('-', ' ')}"
        for value in step.body.with_.values():
            yield tied(part_name(value, at.library) if at.library else value)


def _minutes(word: str, minutes: Number | None) -> str:
    """Write minutes with their word, or they read as part of the instruction."""
    return f"{word}{NO_BREAK}{minutes}{NO_BREAK}min" if minutes else ""


def _handoffs(at: NumberedTree) -> dict[str, Node]:
    lines = {line.target: line for out in at.drawn.values() for line in out}
    handoffs = (line for line in lines.values() if line.target not in at.tree.steps)
    return {one.target: _handoff(one.exit.branch, one.target, at.library) for one in handoffs}


def _handoff(branch: Branch, id: str, library: Library | None) -> Node:
    if branch.returns:
        return Node(id=id, kind="return", text=f"Return: {tied(branch.text)}")
    text = f"Tree: {handoff_title(branch, library)}"
    if branch.step:
        number = library.entry_numbers.get(str(branch.text)) if library else None
        text += f", step{NO_BREAK}{number or branch.step.replace('-', ' ')}"
    return Node(id=id, kind="handoff", text=text, href=f"tree:{branch.text}")


def _edge(at: NumberedTree, step: Step, line: ChartLine) -> Edge:
    way, result = line.exit.kind, line.exit.result
    means = str(result.means or "") if result else ""
    looped = at.tree.steps[line.target].each if way is ExitKind.NEXT else None
    if looped and not means:
        means = f"next {looped[0]}"
    label, chance = _label(step, way, line), float(line.chance)
    number = step.body.results.index(result) if result and isinstance(step.body, Check) else None
    return Edge(str(step.id), line.target, label, means, chance, number)


def _label(step: Step, way: ExitKind, line: ChartLine) -> str:
    match way:
        case ExitKind.CANNOT_TEST:
            return "can't test"
        case ExitKind.SPENT:
            return spent_words(step)
        case ExitKind.STILL_THERE:
            return "still there"
        case _ if line.exit.result and isinstance(step.body, Check):
            return result_words(step.body, line.exit.result)
        case _:
            return ""


def nodes_reached_by_number(edges: Edges, sections: Sequence[OutlineSection]) -> frozenset[str]:
    """Return the nodes that a connector leads to, or the words at the end of a chain."""
    found = set()
    for block in (block for section in sections for block in section.blocks):
        for side in block.sides:
            found.update([] if side.chain else [edges[block.step][side.edge_index].target])
            found.update(edge.target for _, edge in _ways_on(edges, side.chain))
    return frozenset(found)


def _ways_on(edges: Edges, links: Sequence[ChainStep]) -> Iterator[tuple[str, Edge]]:
    """Yield the edges of a chain for which no line is drawn, each with its step."""
    for link, after in zip_longest(links, links[1:]):
        for number, edge in enumerate(edges.get(link.step, ())):
            if after is None or number != after.edge_index:
                yield link.step, edge


def _with_ways_on(flow: Flow) -> Flow:
    """Say in a box drawn beside a section where it goes on, since no connector stands after it."""
    nodes = dict(flow.nodes)
    for block in (block for section in flow.sections for block in section.blocks):
        for side in block.sides:
            for step, edge in _ways_on(flow.edges, side.chain):
                words = f"{edge.label}: go to" if edge.label else "then go to"
                way = f"{words} {flow.nodes[edge.target].number}"
                if way not in nodes[step].ways_on:  # a box may be drawn beside two sections
                    nodes[step] = replace(nodes[step], ways_on=(*nodes[step].ways_on, way))
    return replace(flow, nodes=nodes)


def _with_origins(flow: Flow) -> Flow:
    """Say at the head of a section from where it is reached, for no line comes from above."""
    nodes = dict(flow.nodes)
    leading: dict[str, set[int]] = defaultdict(set)
    for edge in (edge for out in flow.edges.values() for edge in out):
        leading[edge.target].add(int(nodes[edge.source].number))
    for section in flow.sections[1:]:
        head = section.blocks[0].step
        first = [str(number) for number in sorted(leading[head])]
        if first:
            more = "…" if len(first) > ORIGINS else ""
            origin = f"from {', '.join(first[:ORIGINS])}{more}".replace(" ", NO_BREAK)
            nodes[head] = replace(nodes[head], facts=(origin, *nodes[head].facts))
    return replace(flow, nodes=nodes)


def _with_start(flow: Flow) -> Flow:
    if not flow.sections:
        return flow
    first, *rest = flow.sections
    head = OutlineSection((OutlineBlock(START, (), 0), *first.blocks))
    return replace(
        flow,
        nodes={START: Node(START, "start", "Start"), **flow.nodes},
        edges={START: (Edge(START, first.blocks[0].step),), **flow.edges},
        sections=(head, *rest),
    )
