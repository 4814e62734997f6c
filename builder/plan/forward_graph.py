"""A tree without its loops: every edge that leads forward, and none that leads back.

In: a `Tree`. Out: its `ForwardGraph`, an acyclic graph from which chances and minutes are computed.

Left out are the edges back (`back`, `next`, and any edge that closes a loop when the results are
followed in the order of the file) and the detours that only come back. Three exits are unusual:
`cannot_test`, `still_there`, and a result that states a `chance` of coming back. They count only if
nothing else leads to their target: to that step, or to that step of another tree.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.ends import Ending
from builder.model.tree import Tree


@dataclass(frozen=True, slots=True)
class ForwardEdge:
    """One edge forward from a step to another, or (`to` is None) out of the tree."""

    source: str
    index: int  # of its exit among `exits` of the source
    to: str | None
    exit: Exit

    @property
    def key(self) -> tuple[str, int]:
        """Its key among the routes of its tree."""
        return self.source, self.index

    @property
    def is_spent(self) -> bool:
        """Whether it leaves a step that is used up."""
        return self.exit.kind is ExitKind.SPENT

    @property
    def target(self) -> str:
        """Where it leads: a step of this tree, a handoff's branch as written, or a word."""
        if self.to is not None:
            return self.to
        word = self.exit.branch.text
        return f"return {word}" if self.exit.branch.returns else str(word)


@dataclass(frozen=True, slots=True)
class ForwardGraph:
    """The steps that a walk without loops can pass, and the edges between them."""

    order: tuple[str, ...]  # topological: every step comes before the steps it leads to
    outgoing: Mapping[str, tuple[ForwardEdge, ...]]  # by the step they leave
    incoming: Mapping[str, tuple[ForwardEdge, ...]]  # by the step they lead to


def forward_graph(tree: Tree) -> ForwardGraph:
    """Return the forward graph of a tree; if the tree has no end, it has the first step only."""
    start = str(tree.start.id)
    order, edges = _without_back_edges(start, _usual_edges(tree, start))
    ending = _steps_with_an_end(tree, order, edges)
    edges = [edge for edge in edges if edge.to is None or edge.to in ending]
    steps = tuple(step for step in order if step in ending) or (start,)
    outgoing, incoming = _by(edges, lambda edge: edge.source), _by(edges, lambda edge: edge.to)
    return ForwardGraph(
        order=steps,
        outgoing={step: tuple(outgoing[step]) for step in steps},
        incoming={step: tuple(incoming[step]) for step in steps},
    )


def _usual_edges(tree: Tree, start: str) -> list[ForwardEdge]:
    """Keep the usual edges, and an unusual one if nothing else leads to its target."""
    candidates = list(_edges_to_steps(tree))
    order = {edge.key: place for place, edge in enumerate(candidates)}
    edges = [edge for edge in candidates if not _is_unusual(edge)]
    unusual = [edge for edge in candidates if _is_unusual(edge)]
    while True:
        reached = _reached(start, edges)
        new = [edge for edge in unusual if edge.source in reached and edge.target not in reached]
        if not new:
            return sorted(edges, key=lambda edge: order[edge.key])
        edges += new


def _edges_to_steps(tree: Tree) -> Iterable[ForwardEdge]:
    for step in tree.steps.values():
        for index, exit_ in enumerate(exits(step)):
            to = None if exit_.branch.leaves else str(exit_.branch.step)
            if to is None or to in tree.steps:  # `back` and `next` name no step
                yield ForwardEdge(str(step.id), index, to, exit_)


def _is_unusual(edge: ForwardEdge) -> bool:
    result = edge.exit.result
    has_chance = result is not None and result.chance is not None
    return has_chance or edge.exit.kind in (ExitKind.CANNOT_TEST, ExitKind.STILL_THERE)


def _by(
    edges: Iterable[ForwardEdge], key: Callable[[ForwardEdge], str | None]
) -> dict[str | None, list[ForwardEdge]]:
    groups: dict[str | None, list[ForwardEdge]] = defaultdict(list)
    for edge in edges:
        groups[key(edge)].append(edge)
    return groups


def _reached(start: str, edges: Iterable[ForwardEdge]) -> set[str]:
    """Return the steps that the edges reach, and the other trees."""
    outgoing = _by(edges, lambda edge: edge.source)
    reached, stack = {start}, [start]
    while stack:
        new = {edge.target for edge in outgoing[stack.pop()]} - reached
        reached |= new
        stack += new
    return reached


def _without_back_edges(
    start: str, edges: Iterable[ForwardEdge]
) -> tuple[list[str], list[ForwardEdge]]:
    """Drop each edge back to a step on the current path; order the steps, depth first."""
    outgoing = _by(edges, lambda edge: edge.source)
    forward: list[ForwardEdge] = []
    done: list[str] = []
    seen = {start}
    path = {start: iter(outgoing[start])}
    while path:
        step = next(reversed(path))
        edge = next(path[step], None)
        if edge is None:
            done.append(step)
            del path[step]
        elif edge.to not in path:
            forward.append(edge)
            if edge.to is not None and edge.to not in seen:
                seen.add(edge.to)
                path[edge.to] = iter(outgoing[edge.to])
    return done[::-1], forward


def _steps_with_an_end(tree: Tree, order: Sequence[str], edges: Iterable[ForwardEdge]) -> set[str]:
    """Return the steps from which the edges lead to an end."""
    outgoing = _by(edges, lambda edge: edge.source)
    ending: set[str] = set()
    for step in reversed(order):
        is_end = isinstance(tree.steps[step].body, Ending)
        if is_end or any(edge.to is None or edge.to in ending for edge in outgoing[step]):
            ending.add(step)
    return ending
