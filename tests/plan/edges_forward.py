"""The edges forward through a tree and their weights, written from the definition of the format.

In: a `Tree`. Out: its steps, each before those it leads to; the edges between them; the weights of
the ends, and the part of them that each edge carries. This module doesn't use `builder.plan`.
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.ends import Ending, Fix, Return, Stop
from builder.model.tree import Tree

UNUSUAL = (ExitKind.CANNOT_TEST, ExitKind.STILL_THERE)


class Edge(NamedTuple):
    """An edge forward: the step that it leaves, its target, and its exit."""

    source: str
    target: str
    exit: Exit


def edges_forward(tree: Tree) -> tuple[list[str], dict[str, list[Edge]]]:
    """Return the steps, each before those it leads to, and the edges between them."""
    named = [
        Edge(str(name), _target(exit_), exit_)
        for name, step in tree.steps.items()
        for exit_ in exits(step)
        if exit_.branch.leaves or exit_.branch.step in tree.steps
    ]
    used = [edge for edge in named if is_usual(edge.exit)]
    while new := _newly_reached(tree, named, used):
        used = [edge for edge in named if edge in used or edge in new]
    return _without_loops(tree, used)


def _target(exit_: Exit) -> str:
    return f"return {exit_.branch.text}" if exit_.branch.returns else str(exit_.branch.text)


def is_usual(exit_: Exit) -> bool:
    """Whether a step is usually left by this exit."""
    return exit_.kind not in UNUSUAL and not (exit_.result and exit_.result.chance is not None)


def _newly_reached(tree: Tree, named: list[Edge], used: list[Edge]) -> list[Edge]:
    reached = {str(tree.start.id)}
    while more := {edge.target for edge in used if edge.source in reached} - reached:
        reached |= more
    return [
        edge
        for edge in named
        if edge not in used and edge.source in reached and edge.target not in reached
    ]


def _without_loops(tree: Tree, used: list[Edge]) -> tuple[list[str], dict[str, list[Edge]]]:
    outgoing: dict[str, list[Edge]] = {}
    order: list[str] = []
    path: list[str] = []

    def go(step: str) -> bool:
        """Follow the edges in the order of the file; return whether an end can be reached."""
        path.append(step)
        outgoing[step] = []
        ends = isinstance(tree.steps[step].body, Ending)
        for edge in used:
            if edge.source != step or edge.target in path:
                continue
            if edge.target in tree.steps and edge.target not in outgoing:
                go(edge.target)
            if edge.target not in tree.steps or edge.target in order:
                outgoing[step].append(edge)
        path.pop()
        if ends or outgoing[step]:
            order.insert(0, step)
        return ends

    go(str(tree.start.id))
    return order, {step: outgoing[step] for step in order}


Words = Callable[[str], Mapping[str, float]]  # how often a step's procedure returns each word


def end_weights(
    tree: Tree, order: list[str], edges: dict[str, list[Edge]], word: str, words: Words
) -> tuple[dict[str, float], dict[int, float]]:
    """Return the weights of the ends, and the part of them that each edge carries.

    Of a procedure, with a word, only the ends that return it have a weight.
    """
    parts = _Parts(tree, words)
    if tree.file.startswith("kb/"):
        return _of_procedure(tree, order, edges, word, parts)
    into = {step: [edge for out in edges.values() for edge in out if edge.target == step]
            for step in order}  # fmt: skip
    bodies = {step: tree.steps[step].body for step in order}
    fixes = [step for step, body in bodies.items() if isinstance(body, Fix)]
    known = [float(bodies[step].weight) for step in fixes if bodies[step].weight is not None]
    own: dict[str, float] = {}
    for step, body in bodies.items():
        if isinstance(body, Fix | Stop) and body.weight is not None:
            own[step] = float(body.weight)
        elif isinstance(body, Fix):
            stated = any(stated_weight(edge) is not None for edge in into[step])
            own[step] = 0.0 if stated else sum(known) / len(known) if known else 1.0
    carried = _carried(order, edges, parts, own, lambda edge: stated_weight(edge) or 0.0)
    if not any(carried.values()) and not any(own.values()):
        stops = [step for step, body in bodies.items() if isinstance(body, Stop)]
        own = dict.fromkeys(fixes or stops, 1.0)
        carried = _carried(order, edges, parts, own, lambda _: 0.0 if fixes else 1.0)
    return own, carried


def _of_procedure(
    tree: Tree, order: list[str], edges: dict[str, list[Edge]], word: str, parts: "_Parts"
) -> tuple[dict[str, float], dict[int, float]]:
    """Count every result that returns by its weight or 1, and a `return` step that isn't spent."""
    every = [edge for out in edges.values() for edge in out]
    own = {}
    for step in order:
        if isinstance(tree.steps[step].body, Return):
            usual = [e for e in every if e.target == step and e.exit.kind is not ExitKind.SPENT]
            counts = usual and all(stated_weight(edge) is None for edge in usual)
            own[step] = float(bool(counts) and word in ("", tree.steps[step].text))

    def of_result(edge: Edge) -> float:
        weight = stated_weight(edge)
        counts = word in ("", edge.exit.branch.text)
        return (1.0 if weight is None else weight) if counts else 0.0

    carried = _carried(order, edges, parts, own, of_result)
    if word and not any(own.values()) and not any(carried.values()):  # by `spent` alone
        own = {step: float(tree.steps[step].text == word) for step in own}
        carried = _carried(order, edges, parts, own, of_result)
    return own, carried


class _Parts(NamedTuple):
    """In what parts edges without a weight share that of the step they lead to."""

    tree: Tree
    words: Words

    def of(self, edges: list[Edge]) -> list[float]:
        """Return the part of each edge; they add up to 1."""
        parts = [self._part(edge, edges) for edge in edges]
        spent = [edge.exit.kind is ExitKind.SPENT for edge in edges]
        if self.tree.file.startswith("kb/") and not all(spent):
            parts = [0.0 if one else part for one, part in zip(spent, parts, strict=True)]
        return [part / sum(parts) for part in parts]

    def _part(self, edge: Edge, edges: list[Edge]) -> float:
        words = self.words(edge.source)
        same = [one for one in edges if one.source == edge.source]
        own = [words.get(str(one.exit.result.text) if one.exit.result else "", 0.0) for one in same]
        here = words.get(str(edge.exit.result.text) if edge.exit.result else "", 0.0)
        return here * len(own) / sum(own) if sum(own) else 1.0


def stated_weight(edge: Edge) -> float | None:
    """Return the weight that a result states for its edge."""
    result = edge.exit.result
    return float(result.weight) if result and result.weight is not None else None


def _carried(
    order: list[str],
    edges: dict[str, list[Edge]],
    parts: _Parts,
    own: dict[str, float],
    of_handoff: Callable[[Edge], float],
) -> dict[int, float]:
    carried: dict[int, float] = {}
    into = {step: [edge for out in edges.values() for edge in out if edge.target == step]
            for step in order}  # fmt: skip
    for step in reversed(order):
        for edge in edges[step]:
            if edge.target not in edges:
                carried[id(edge.exit)] = of_handoff(edge)
        weight = own.get(step, 0.0) + sum(carried[id(edge.exit)] for edge in edges[step])
        stated = [edge for edge in into[step] if stated_weight(edge) is not None]
        others = [edge for edge in into[step] if stated_weight(edge) is None]
        sum_stated = sum(stated_weight(edge) or 0.0 for edge in stated)
        weight = weight or sum_stated
        in_proportion = bool(sum_stated) and (sum_stated > weight or not others)
        for edge in stated:
            share = stated_weight(edge) or 0.0
            carried[id(edge.exit)] = share * weight / sum_stated if in_proportion else share
        rest = 0.0 if in_proportion else weight - sum_stated
        for edge, part in zip(others, parts.of(others) if others else (), strict=True):
            carried[id(edge.exit)] = rest * part
        if stated and not others and not in_proportion:
            for edge in stated:
                carried[id(edge.exit)] = weight / len(stated)
    return carried
