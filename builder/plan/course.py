"""A tree as it is walked straight through: every way on, and no way back.

In: a `Tree`. Out: its `Course`, the ground on which chances and minutes are worked out.

Left out are the ways back (`back`, `next`, and whatever closes a loop when the results are followed
in the order of the file) and the ways that only make a detour and come back. Three ways are not how
a step is usually left: `could_not`, `still_there`, and a result that states a `chance` of coming
back. They count only where nothing else leads to their target: to that step, or to that place in
another tree.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.tree import Fix, Stop, Tree


@dataclass(frozen=True, slots=True)
class WayOn:
    """One way on from a step to another, or (`to` is None) to another tree."""

    source: str
    index: int  # of its exit among `exits` of the source
    to: str | None
    exit: Exit

    @property
    def key(self) -> tuple[str, int]:
        """What names it among the routes of its tree."""
        return self.source, self.index

    @property
    def target(self) -> str:
        """Where it leads: a step of this tree, or what is written where it is handed off."""
        return str(self.exit.branch.text) if self.to is None else self.to


@dataclass(frozen=True, slots=True)
class Course:
    """The steps that a walk straight through can come by, and the ways between them."""

    order: tuple[str, ...]  # every step stands before the steps it leads to
    out: Mapping[str, tuple[WayOn, ...]]  # by the step they leave
    into: Mapping[str, tuple[WayOn, ...]]  # by the step they lead to


def course(tree: Tree) -> Course:
    """Work out the course of a tree; a tree without any end has its first step alone."""
    start = str(tree.start.id)
    order, onward = _without_ways_back(start, _usual(tree, start))
    ending = _ending(tree, order, onward)
    kept = [way for way in onward if way.source in ending and (way.to is None or way.to in ending)]
    steps = tuple(step for step in order if step in ending) or (start,)
    out, into = _by(kept, lambda way: way.source), _by(kept, lambda way: way.to)
    return Course(
        order=steps,
        out={step: tuple(out[step]) for step in steps},
        into={step: tuple(into[step]) for step in steps},
    )


def _usual(tree: Tree, start: str) -> list[WayOn]:
    """Keep the usual ways, and an unusual one where nothing else leads to its target."""
    named = list(_named(tree))
    order = {way.key: place for place, way in enumerate(named)}
    ways = [way for way in named if not _unusual(way)]
    unusual = [way for way in named if _unusual(way)]
    while True:
        reached = _reached(start, ways)
        new = [way for way in unusual if way.source in reached and way.target not in reached]
        if not new:
            return sorted(ways, key=lambda way: order[way.key])
        ways += new


def _named(tree: Tree) -> Iterable[WayOn]:
    for step in tree.steps.values():
        for index, way in enumerate(exits(step)):
            to = None if way.branch.tree else str(way.branch.step)
            if way.kind not in (ExitKind.BACK, ExitKind.NEXT) and (to is None or to in tree.steps):
                yield WayOn(str(step.id), index, to, way)


def _unusual(way: WayOn) -> bool:
    result = way.exit.result
    stated = result is not None and result.chance is not None
    return stated or way.exit.kind in (ExitKind.COULD_NOT, ExitKind.STILL_THERE)


def _by(
    ways: Iterable[WayOn], name: Callable[[WayOn], str | None]
) -> dict[str | None, list[WayOn]]:
    found: dict[str | None, list[WayOn]] = defaultdict(list)
    for way in ways:
        found[name(way)].append(way)
    return found


def _reached(start: str, ways: Iterable[WayOn]) -> set[str]:
    """Return the steps that the ways reach, and the other trees."""
    out = _by(ways, lambda way: way.source)
    reached, waiting = {start}, [start]
    while waiting:
        new = {way.target for way in out[waiting.pop()]} - reached
        reached |= new
        waiting += new
    return reached


def _without_ways_back(start: str, ways: Iterable[WayOn]) -> tuple[list[str], list[WayOn]]:
    """Drop each way that comes back to a step on the track; order the steps that are left."""
    out = _by(ways, lambda way: way.source)
    kept: list[WayOn] = []
    done: list[str] = []
    seen = {start}
    track = {start: iter(out[start])}
    while track:
        here = next(reversed(track))
        way = next(track[here], None)
        if way is None:
            done.append(here)
            del track[here]
        elif way.to not in track:
            kept.append(way)
            if way.to is not None and way.to not in seen:
                seen.add(way.to)
                track[way.to] = iter(out[way.to])
    return done[::-1], kept


def _ending(tree: Tree, order: Sequence[str], ways: Iterable[WayOn]) -> set[str]:
    """Return the steps from which a walk straight through comes to an end."""
    out = _by(ways, lambda way: way.source)
    ending: set[str] = set()
    for step in reversed(order):
        is_end = isinstance(tree.steps[step].body, Fix | Stop)
        if is_end or any(way.to is None or way.to in ending for way in out[step]):
            ending.add(step)
    return ending
