"""How often a walk passes each step, takes each exit, and ends at each end.

In: a `Tree`. Out: its `WalkChances`, exact; 1 is every walk.

The weights of the ends state how often each one occurs. The chance of an end is its weight divided
by all weights of the tree, so the chances of all ends add up to 1. From the ends, the weights are
carried back over the edges that lead there:

- The weight of a step is split evenly over the edges to it. An edge with its own `weight` takes
  that much, and the others share the rest; stated weights that don't fit count in proportion.
- A fix without a weight takes the weights stated on the edges to it. Without those, it counts as
  the average of the fixes that have one (1 if none has, which is an even split).
- A stop or a handoff without a weight counts 0. If that leaves nothing at all, every fix counts 1,
  and in a tree without a fix every end.
- A step that runs a procedure gives the edges to one step not even parts of its own, but parts in
  proportion to how often the procedure returns their words.
- In a procedure every result that returns counts its `weight`, or 1, and so does every `return`
  step, but for one that only `spent` leads to. No share of a step comes from `spent` if another
  edge leads there, as nobody says how often.
- Loops are not in these figures: an edge back leads to no end of its own. How often it is taken
  (its `chance`) counts in the minutes.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import exits
from builder.model.ends import Ending, Fix, Return, Stop
from builder.model.tree import ProcedureRun, Tree
from builder.plan.forward_graph import ForwardEdge, ForwardGraph, forward_graph

ZERO = Fraction(0)


@dataclass(frozen=True, slots=True)
class WalkChances:
    """Shares of all walks, 0 to 1."""

    steps: Mapping[str, Fraction]  # of every step of the tree: walks that pass it
    routes: Mapping[tuple[str, int], Fraction]  # of every exit, by step and index among its `exits`
    ends: Mapping[str, Fraction]  # of every fix, stop and `return`: walks that end there


def walk_chances(tree: Tree, graph: ForwardGraph | None = None) -> WalkChances:
    """Return the chances of a tree; pass its forward graph if you have it."""
    graph = graph or forward_graph(tree)
    own = (_weights_of_words if tree.is_procedure else _weights_of_ends)(tree, graph)
    weights = _carried_back(tree, graph, own)
    if not sum(weights.values(), ZERO) and not any(own.values()):
        own = _even_weights(tree, graph)
        weights = _carried_back(tree, graph, own)
    return _shares_of_walks(tree, graph, own, weights)


End = str | tuple[str, int]  # an end by its step, a handoff or a word by the key of its edge


def _weights_of_ends(tree: Tree, graph: ForwardGraph) -> dict[End, Fraction]:
    bodies = {step: tree.steps[step].body for step in graph.order}
    known = [
        Fraction(body.weight)
        for body in bodies.values()
        if isinstance(body, Fix) and body.weight is not None
    ]
    average = sum(known, ZERO) / len(known) if known else Fraction(1)
    weights: dict[End, Fraction] = {}
    for step, body in bodies.items():
        if isinstance(body, Fix | Stop) and body.weight is not None:
            weights[step] = Fraction(body.weight)
        elif isinstance(body, Fix):
            weights[step] = ZERO if any(map(_stated_weight, graph.incoming[step])) else average
        for edge in graph.outgoing[step]:
            if edge.to is None:
                weights[edge.key] = _stated_weight(edge) or ZERO
    return weights


def _weights_of_words(tree: Tree, graph: ForwardGraph) -> dict[End, Fraction]:
    """Return the weights of all that a procedure returns."""
    weights: dict[End, Fraction] = {}
    for step in graph.order:
        if isinstance(tree.steps[step].body, Return):
            usual = [edge for edge in graph.incoming[step] if not edge.is_spent]
            counts = usual and not any(map(_stated_weight, usual))
            weights[step] = Fraction(bool(counts))
        for edge in graph.outgoing[step]:
            if edge.to is None:
                weight = _stated_weight(edge)
                weights[edge.key] = Fraction(1) if weight is None else weight
    return weights


def _even_weights(tree: Tree, graph: ForwardGraph) -> dict[End, Fraction]:
    """Count every fix once, or every end if there is no fix."""
    fixes = [step for step in graph.order if isinstance(tree.steps[step].body, Fix)]
    stops = [step for step in graph.order if isinstance(tree.steps[step].body, Stop | Return)]
    handoffs = [
        edge.key for step in graph.order for edge in graph.outgoing[step] if edge.to is None
    ]
    ends: list[End] = [*fixes] or [*stops, *handoffs]
    return dict.fromkeys(ends, Fraction(1))


def _stated_weight(edge: ForwardEdge) -> Fraction | None:
    result = edge.exit.result
    return Fraction(result.weight) if result and result.weight is not None else None


def _carried_back(
    tree: Tree, graph: ForwardGraph, own: Mapping[End, Fraction]
) -> dict[tuple[str, int], Fraction]:
    """Carry the weights of the ends back to every edge."""
    weights: dict[tuple[str, int], Fraction] = {
        edge.key: own.get(edge.key, ZERO)
        for step in graph.order
        for edge in graph.outgoing[step]
        if edge.to is None
    }
    for step in reversed(graph.order):
        outgoing = (weights[edge.key] for edge in graph.outgoing[step])
        weight = own.get(step, ZERO) + sum(outgoing, ZERO)
        weights |= _split(tree, weight, graph.incoming[step])
    return weights


def _split(
    tree: Tree, weight: Fraction, edges: Sequence[ForwardEdge]
) -> dict[tuple[str, int], Fraction]:
    """Split the weight of a step over the edges to it."""
    stated = {e.key: own for e in edges if (own := _stated_weight(e)) is not None}
    if not stated and len(edges) == 1:  # as for most steps
        return {edges[0].key: weight}
    others = [edge.key for edge in edges if edge.key not in stated]
    sum_stated = sum(stated.values(), ZERO)
    weight = weight or sum_stated  # without a weight beyond the step, the edges' weights count
    if stated and sum_stated and (sum_stated > weight or not others):
        return dict.fromkeys(others, ZERO) | {
            key: own * weight / sum_stated for key, own in stated.items()
        }
    if not others:
        return dict.fromkeys(stated, weight / max(len(stated), 1))
    parts = _parts(tree, [edge for edge in edges if edge.key not in stated])
    rest = (weight - sum_stated) / sum(parts.values(), ZERO)
    return stated | {key: part * rest for key, part in parts.items()}


def _parts(tree: Tree, edges: Sequence[ForwardEdge]) -> dict[tuple[str, int], Fraction]:
    """Return in what parts edges without weights share the weight of the step they lead to."""
    if tree.is_procedure and not all(edge.is_spent for edge in edges):
        return {e.key: ZERO if e.is_spent else part for e in edges
                for part in (_part(tree, e, edges),)}  # fmt: skip
    return {edge.key: _part(tree, edge, edges) for edge in edges}


def _part(tree: Tree, edge: ForwardEdge, edges: Iterable[ForwardEdge]) -> Fraction:
    """Return 1, but for edges out of a procedure: as often as it returns their words."""
    run = tree.steps[edge.source].run
    if run is None:
        return Fraction(1)
    own = [_chance_of_word(run, other) for other in edges if other.source == edge.source]
    total = sum(own, ZERO)
    return _chance_of_word(run, edge) * len(own) / total if total else Fraction(1)


def _chance_of_word(run: ProcedureRun, edge: ForwardEdge) -> Fraction:
    result = edge.exit.result
    outcome = run.outcomes.get(str(result.text)) if result else None
    return outcome.chance if outcome else ZERO


def _shares_of_walks(
    tree: Tree,
    graph: ForwardGraph,
    own: Mapping[End, Fraction],
    weights: Mapping[tuple[str, int], Fraction],
) -> WalkChances:
    """Follow the weights down from the start, as shares of all walks."""
    steps = dict.fromkeys(map(str, tree.steps), ZERO) | {graph.order[0]: Fraction(1)}
    routes = {
        (name, index): ZERO
        for name, step in tree.steps.items()
        for index in range(len(exits(step)))
    }
    ends: dict[str, Fraction] = {}
    for step in graph.order:
        edges, here = graph.outgoing[step], own.get(step, ZERO)
        total = here + sum((weights[edge.key] for edge in edges), ZERO)
        is_end = isinstance(tree.steps[step].body, Ending)
        if is_end:
            ends[step] = steps[step] * (here / total if total else 1)
        for edge in edges:
            part = weights[edge.key] / total if total else Fraction(not is_end, len(edges))
            routes[edge.key] = steps[step] * part
            if edge.to is not None:
                steps[edge.to] += routes[edge.key]
    return WalkChances(steps, routes, ends)
