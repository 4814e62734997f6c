"""The ways straight on through a tree, and what they weigh; written from the words of the format.

In: a `Tree`. Out: its steps, each before those it leads to; the ways on between them; the weights
of the ends and what of them each way carries. Nothing of `builder.plan` is in here.
"""

from collections.abc import Callable
from typing import NamedTuple

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.tree import Fix, Stop, Tree

SELDOM = (ExitKind.COULD_NOT, ExitKind.STILL_THERE)


class On(NamedTuple):
    """A way on: the step that it leaves, where it leads, and its exit."""

    source: str
    target: str
    exit: Exit


def straight(tree: Tree) -> tuple[list[str], dict[str, list[On]]]:
    """Return the steps, each before those it leads to, and the ways between them."""
    named = [
        On(str(name), str(way.branch.text), way)
        for name, step in tree.steps.items()
        for way in exits(step)
        if way.branch.tree or way.branch.step in tree.steps
    ]
    used = [way for way in named if is_usual(way.exit)]
    while new := _newly_reached(tree, named, used):
        used = [way for way in named if way in used or way in new]
    return _without_loops(tree, used)


def is_usual(way: Exit) -> bool:
    """Whether a step is usually left by this way."""
    return way.kind not in SELDOM and not (way.result and way.result.chance is not None)


def _newly_reached(tree: Tree, named: list[On], used: list[On]) -> list[On]:
    reached = {str(tree.start.id)}
    while more := {way.target for way in used if way.source in reached} - reached:
        reached |= more
    return [way for way in named
            if way not in used and way.source in reached and way.target not in reached]  # fmt: skip


def _without_loops(tree: Tree, used: list[On]) -> tuple[list[str], dict[str, list[On]]]:
    kept: dict[str, list[On]] = {}
    order: list[str] = []
    track: list[str] = []

    def go(step: str) -> bool:
        """Go on in the order of the file; tell whether an end can be reached."""
        track.append(step)
        kept[step] = []
        ends = isinstance(tree.steps[step].body, Fix | Stop)
        for way in used:
            if way.source != step or way.target in track:
                continue
            if way.target in tree.steps and way.target not in kept:
                go(way.target)
            if way.target not in tree.steps or way.target in order:
                kept[step].append(way)
        track.pop()
        if ends or kept[step]:
            order.insert(0, step)
        return ends

    go(str(tree.start.id))
    return order, {step: kept[step] for step in order}


def weigh(
    tree: Tree, order: list[str], ways: dict[str, list[On]]
) -> tuple[dict[str, float], dict[int, float]]:
    """Return the weights of the ends, and what of them each way carries."""
    into = {step: [way for out in ways.values() for way in out if way.target == step]
            for step in order}  # fmt: skip
    bodies = {step: tree.steps[step].body for step in order}
    fixes = [step for step, body in bodies.items() if isinstance(body, Fix)]
    known = [float(bodies[step].weight) for step in fixes if bodies[step].weight is not None]
    own: dict[str, float] = {}
    for step, body in bodies.items():
        if isinstance(body, Fix | Stop) and body.weight is not None:
            own[step] = float(body.weight)
        elif isinstance(body, Fix):
            told = any(stated(way) is not None for way in into[step])
            own[step] = 0.0 if told else sum(known) / len(known) if known else 1.0
    carried = _carried(order, ways, into, own, lambda way: stated(way) or 0.0)
    if not any(carried.values()) and not any(own.values()):
        stops = [step for step, body in bodies.items() if isinstance(body, Stop)]
        own = dict.fromkeys(fixes or stops, 1.0)
        carried = _carried(order, ways, into, own, lambda _: 0.0 if fixes else 1.0)
    return own, carried


def stated(way: On) -> float | None:
    """Return the weight that a result states for its way."""
    result = way.exit.result
    return float(result.weight) if result and result.weight is not None else None


def _carried(
    order: list[str],
    ways: dict[str, list[On]],
    into: dict[str, list[On]],
    own: dict[str, float],
    out_of_the_tree: Callable[[On], float],
) -> dict[int, float]:
    carried: dict[int, float] = {}
    for step in reversed(order):
        for way in ways[step]:
            if way.target not in ways:
                carried[id(way.exit)] = out_of_the_tree(way)
        weight = own.get(step, 0.0) + sum(carried[id(way.exit)] for way in ways[step])
        told = [way for way in into[step] if stated(way) is not None]
        others = [way for way in into[step] if stated(way) is None]
        sum_told = sum(stated(way) or 0.0 for way in told)
        weight = weight or sum_told
        in_proportion = bool(sum_told) and (sum_told > weight or not others)
        for way in told:
            share = stated(way) or 0.0
            carried[id(way.exit)] = share * weight / sum_told if in_proportion else share
        for way in others:
            rest = 0.0 if in_proportion else weight - sum_told
            carried[id(way.exit)] = rest / len(others)
        if told and not others and not in_proportion:
            for way in told:
                carried[id(way.exit)] = weight / len(told)
    return carried
