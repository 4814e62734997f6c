"""What a chart shows: nodes with their words, labelled edges, and the order they are read in.

In: a `Tree`, and the `Library` for signal words and the titles of other trees. Out: a `Flow`, all
that the layout knows. Graphs that are not trees of a shop can be laid out by making a `Flow`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import zip_longest

from builder.model.knowledge import Signal
from builder.model.library import Library
from builder.model.routes import Exit, Way, exits, list_step
from builder.model.tree import Branch, Check, Result, Step, Tree
from builder.plan.numbering import Line, lines, numbering, tree_outline
from builder.plan.outline import Block, Section
from builder.trade.units import unit

START = "start:"  # the id of the start terminator; no step id has a colon


@dataclass(frozen=True, slots=True)
class Node:
    """One symbol: its words, and where a reader who wants more is sent."""

    id: str
    kind: str  # start, check, action, fix, stop, hand-over
    text: str
    number: str = ""
    notes: tuple[str, ...] = ()  # "still there: go to 3"
    when: str = ""  # the conditions under which it counts
    minutes: str = ""
    caution: Signal | None = None
    href: str = ""


@dataclass(frozen=True, slots=True)
class Edge:
    """A line, the words beside it, and the weight of what lies beyond it."""

    source: str
    target: str
    label: str = ""
    weight: float = 0
    means: str = ""  # what the result means, in lighter type


@dataclass(frozen=True, slots=True)
class Flow:
    """A chart before it has a place; `edges` of a node are in the order the outline counts."""

    title: str
    nodes: Mapping[str, Node]
    edges: Mapping[str, tuple[Edge, ...]]
    sections: tuple[Section, ...]
    arrivals: frozenset[str] = field(default_factory=frozenset)  # nodes that connectors lead to


def flow_of(tree: Tree, library: Library | None = None) -> Flow:
    """Turn a tree into what its chart shows."""
    numbers = {step: str(number) for step, number in numbering(tree).items()}
    drawn = lines(tree)
    nodes = {name: _node(tree, step, numbers, drawn, library) for name, step in tree.steps.items()}
    nodes |= {
        line.target: _hand_over(line.exit.branch, line.target, library)
        for out in drawn.values()
        for line in out
        if line.target not in tree.steps
    }
    edges = {
        step: tuple(
            Edge(
                step,
                line.target,
                _label(tree.steps[step], line.exit),
                float(line.weight),
                str((line.exit.result and line.exit.result.means) or ""),
            )
            for line in out
        )
        for step, out in drawn.items()
    }  # fmt: skip
    sections = tree_outline(tree, drawn)
    flow = Flow(str(tree.title), nodes, edges, sections, arrivals(edges, sections))
    return _with_start(_with_ways_on(flow))


def arrivals(
    edges: Mapping[str, tuple[Edge, ...]], sections: tuple[Section, ...]
) -> frozenset[str]:
    """Return the nodes that a connector leads to."""
    return frozenset(
        edges[block.step][side.lead].target
        for section in sections
        for block in section.blocks
        for side in block.sides
        if not side.links
    )


def _with_ways_on(flow: Flow) -> Flow:
    """Say in a box drawn beside a section where it goes on, since no connector stands after it."""
    nodes = dict(flow.nodes)
    for side in (side for s in flow.sections for block in s.blocks for side in block.sides):
        for link, after in zip_longest(side.links, side.links[1:]):
            for number, edge in enumerate(flow.edges.get(link.step, ())):
                if after is None or number != after.lead:
                    words = f"{edge.label}: go to" if edge.label else "then go to"
                    note = f"{words} {flow.nodes[edge.target].number}"
                    notes = nodes[link.step].notes
                    nodes[link.step] = replace(nodes[link.step], notes=(*notes, note))
    return replace(flow, nodes=nodes)


def _with_start(flow: Flow) -> Flow:
    if not flow.sections:
        return flow
    first, *rest = flow.sections
    start = Section((Block(START, (), 0), *first.blocks))
    return Flow(
        title=flow.title,
        nodes={START: Node(START, "start", "Start"), **flow.nodes},
        edges={START: (Edge(START, first.blocks[0].step),), **flow.edges},
        sections=(start, *rest),
        arrivals=flow.arrivals,
    )


def _node(
    tree: Tree,
    step: Step,
    numbers: Mapping[str, str],
    drawn: Mapping[str, tuple[Line, ...]],
    library: Library | None,
) -> Node:
    return Node(
        id=str(step.id),
        kind=step.kind,
        text=str(step.text),
        number=numbers[step.id],
        notes=tuple(_notes(tree, step, numbers, drawn[step.id], library)),
        when=", ".join(step.when),
        minutes=f"{step.minutes} min" if step.minutes else "",
        caution=gravest(step, library) if library else None,
        href=f"#step-{step.id}",
    )


def gravest(step: Step, library: Library) -> Signal | None:
    """Return the gravest signal word of a step's hazards (the word that ANSI Z535.4 asks for)."""
    words = [library.hazards[hazard].signal for hazard in step.hazards if hazard in library.hazards]
    return min(words, key=list(Signal).index, default=None)


def _hand_over(branch: Branch, id: str, library: Library | None) -> Node:
    known = library.trees.get(branch.tree or "") if library else None
    step = f", step {branch.step}" if branch.step else ""
    return Node(
        id=id,
        kind="hand-over",
        text=f"Tree: {known.title if known else branch.tree}{step}",
        href=f"tree:{branch.text}",
    )


def _notes(
    tree: Tree,
    step: Step,
    numbers: Mapping[str, str],
    drawn: tuple[Line, ...],
    library: Library | None,
) -> Iterator[str]:
    """Yield the ways out that are said in the box itself because no line is drawn for them."""
    as_lines = [line.exit for line in drawn]
    if isinstance(step.body, Check) and step.body.several:
        yield "take the first that fits"
    for way in exits(step):
        if way in as_lines:
            continue
        where = _where(tree, step, way, numbers, library)
        match way.way:
            case Way.SPENT if where:
                yield f"{_spent(step)}: {where}"
            case Way.STILL_THERE if where:
                yield f"still there: {where}"
            case Way.BACK:
                yield "then back to " + (_callers(tree, step, numbers) or "the step before")
            case _:
                pass


def _where(
    tree: Tree, step: Step, way: Exit, numbers: Mapping[str, str], library: Library | None
) -> str:
    if way.branch.tree:
        return f"go to {_hand_over(way.branch, '', library).text[len('Tree: ') :]}"
    target = list_step(tree, step) if way.branch.next_item else way.branch.step
    return f"go to {numbers[target]}" if target and target in numbers else ""


def _spent(step: Step) -> str:
    if step.each:
        return "list at its end"
    return f"after {step.at_most} times" if step.at_most and step.at_most > 1 else "after once"


def _callers(tree: Tree, step: Step, numbers: Mapping[str, str]) -> str:
    found = {
        numbers[other.id]
        for other in tree.steps.values()
        for way in exits(other)
        if way.branch.step == step.id and not way.branch.tree and way.way is not Way.BACK
    }
    return " or ".join(sorted(found, key=int))


def _label(step: Step, way: Exit) -> str:
    match way.way:
        case Way.RESULT | Way.NEXT if way.result:
            return result_words(step, way.result)
        case Way.COULD_NOT:
            return "could not be done"
        case Way.SPENT:
            return _spent(step)
        case Way.STILL_THERE:
            return "still there"
        case _:
            return ""


def result_words(step: Step, result: Result) -> str:
    """Return a result as a reader sees it: every limit with its unit."""
    body = step.body
    if not isinstance(body, Check) or not result.ranges or body.figure:
        return str(result.said)
    if len(body.readings) == 1 and not body.computed:
        return _with_unit(str(result.said), body.readings[0].unit, bool(body.readings[0].one_of))
    units = {reading.name: (reading.unit, bool(reading.one_of)) for reading in body.readings}
    parts = []
    for part in str(result.said).split(", "):
        name, _, words = part.partition(": ")
        sign, phrase = units.get(name, ("", True))
        parts.append(f"{name} {_with_unit(words, sign, phrase)}")
    return ", ".join(parts)


def _with_unit(words: str, symbol: str, phrase: bool) -> str:
    known = unit(symbol)
    sign = known.sign if known else symbol
    return words if phrase or words == "OL" or not sign else f"{words} {sign}"
