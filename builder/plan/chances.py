"""How often a walk comes by each step, takes each way, and ends at each end.

In: a `Tree`. Out: its `Chances`, exact; 1 is every walk.

The weights of the ends say how often it turns out to be each, so the chance of an end is its weight
divided by all weights of the tree, and the chances of all ends add up to 1. From the ends they are
carried back over the ways that lead there:

- The weight of a step is split evenly over the ways to it. A way with a `weight` of its own takes
  that much, and the others share what is left; if the stated weights do not fit, they count in
  proportion.
- A fix without a weight takes the weights stated on the ways to it; without those either, it counts
  as much as the average of the fixes that have one (1 if none has, which is an even split).
- A stop and a handoff without a weight count 0. If that leaves nothing at all, every fix counts
  1, and in a tree without a fix every end.
- Ways back are not in these figures: a way back leads to no end of its own. How often it is taken
  (its `chance`) is counted in the minutes.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.routes import exits
from builder.model.tree import Fix, Stop, Tree
from builder.plan.course import Course, WayOn, course

NEVER = Fraction(0)


@dataclass(frozen=True, slots=True)
class Chances:
    """Shares of all walks, 0 to 1."""

    steps: Mapping[str, Fraction]  # of every step of the tree: how many walks come by it
    routes: Mapping[tuple[str, int], Fraction]  # of every way, by step and index among its `exits`
    ends: Mapping[str, Fraction]  # of every fix and stop: how many walks end there


def chances(tree: Tree, along: Course | None = None) -> Chances:
    """Work out the chances of a tree; `along` is its course, if it is at hand."""
    along = along or course(tree)
    own = _weights_of_ends(tree, along)
    weights = _carried_back(along, own)
    if not sum(weights.values(), NEVER) and not any(own.values()):
        own = _even(tree, along)
        weights = _carried_back(along, own)
    return _shared_out(tree, along, own, weights)


End = str | tuple[str, int]  # a fix or a stop by its step, a handoff by its way


def _weights_of_ends(tree: Tree, along: Course) -> dict[End, Fraction]:
    bodies = {step: tree.steps[step].body for step in along.order}
    known = [
        Fraction(body.weight)
        for body in bodies.values()
        if isinstance(body, Fix) and body.weight is not None
    ]
    average = sum(known, NEVER) / len(known) if known else Fraction(1)
    found: dict[End, Fraction] = {}
    for step, body in bodies.items():
        if isinstance(body, Fix | Stop) and body.weight is not None:
            found[step] = Fraction(body.weight)
        elif isinstance(body, Fix):
            found[step] = NEVER if any(map(_stated, along.into[step])) else average
        for way in along.out[step]:
            if way.to is None:
                found[way.key] = _stated(way) or NEVER
    return found


def _even(tree: Tree, along: Course) -> dict[End, Fraction]:
    """Count every fix once, or every end where there is no fix."""
    fixes = [step for step in along.order if isinstance(tree.steps[step].body, Fix)]
    stops = [step for step in along.order if isinstance(tree.steps[step].body, Stop)]
    others = [way.key for step in along.order for way in along.out[step] if way.to is None]
    ends: list[End] = [*fixes] or [*stops, *others]
    return dict.fromkeys(ends, Fraction(1))


def _stated(way: WayOn) -> Fraction | None:
    result = way.exit.result
    return Fraction(result.weight) if result and result.weight is not None else None


def _carried_back(along: Course, own: Mapping[End, Fraction]) -> dict[tuple[str, int], Fraction]:
    """Carry the weights of the ends back to every way."""
    weights: dict[tuple[str, int], Fraction] = {
        way.key: own.get(way.key, NEVER)
        for step in along.order
        for way in along.out[step]
        if way.to is None
    }
    for step in reversed(along.order):
        beyond = (weights[way.key] for way in along.out[step])
        weights |= _split(own.get(step, NEVER) + sum(beyond, NEVER), along.into[step])
    return weights


def _split(weight: Fraction, ways: Iterable[WayOn]) -> dict[tuple[str, int], Fraction]:
    """Split the weight of a step over the ways to it."""
    stated = {way.key: given for way in ways if (given := _stated(way)) is not None}
    others = [way.key for way in ways if way.key not in stated]
    told = sum(stated.values(), NEVER)
    weight = weight or told  # where nothing beyond has a weight, the ways themselves say it
    if stated and told and (told > weight or not others):
        return dict.fromkeys(others, NEVER) | {
            key: given * weight / told for key, given in stated.items()
        }
    sharing = others or list(stated)
    return stated | dict.fromkeys(sharing, (weight - told) / max(len(sharing), 1))


def _shared_out(
    tree: Tree,
    along: Course,
    own: Mapping[End, Fraction],
    weights: Mapping[tuple[str, int], Fraction],
) -> Chances:
    """Follow the weights from the start down, as shares of all walks."""
    steps = dict.fromkeys(map(str, tree.steps), NEVER) | {along.order[0]: Fraction(1)}
    routes = {
        (name, index): NEVER
        for name, step in tree.steps.items()
        for index in range(len(exits(step)))
    }
    ends: dict[str, Fraction] = {}
    for step in along.order:
        ways, here = along.out[step], own.get(step, NEVER)
        total = here + sum((weights[way.key] for way in ways), NEVER)
        is_end = isinstance(tree.steps[step].body, Fix | Stop)
        if is_end:
            ends[step] = steps[step] * (here / total if total else 1)
        for way in ways:
            part = weights[way.key] / total if total else Fraction(not is_end, len(ways))
            routes[way.key] = steps[step] * part
            if way.to is not None:
                steps[way.to] += routes[way.key]
    return Chances(steps, routes, ends)
