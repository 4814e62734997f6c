"""A walker that follows trees by dice, written from the words of the format alone.

In: a `Tree` and a source of chance. Out: the minutes of one walk after another. Nothing of
`builder.plan` is in here, so that its exact figures can be held against the average of many walks.

A walk is drawn by the weights: which way on at each step, and so where it ends. Then it is walked:
every arrival at a step may take a way back by its `chance`; then come the steps there and the same
way again. A step is done as often as `at_most` allows; a walk that would use one up without being
one that leaves by its `spent` is drawn again. One that does leave by `spent` has gone round as
often as it was allowed to; what the rounds do of other steps is not held against those.
"""

from collections import Counter, deque
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.tree import Fix, Stop, Tree

from .straight import SELDOM, On, straight, weigh

MOST_TRIES = 10_000  # of one walk, until it uses nothing up
Lap = tuple[str, ...]  # the steps on a way back, and last the one that it leads back to


class UsedUpError(Exception):
    """A step came up once more than it may be done."""


@dataclass
class Walker:
    """A tree, made ready to be walked many times."""

    tree: Tree
    dice: Random

    def __post_init__(self) -> None:
        """Find the ways straight on, how heavy each is, and every way back."""
        steps = list(map(str, self.tree.steps))
        order, self.ways = straight(self.tree)
        self.own, self.weights = weigh(self.tree, order, self.ways)
        self.minutes = {step: minutes(self.tree, step) for step in steps}
        self.allowed = {step: allowed(self.tree, step) for step in steps}
        self.passed = {
            step: frozenset(one for one in order if step not in self._reached_without(one))
            for step in order
        }
        self.by_chance = {step: list(self._by_chance(step)) for step in order}
        self.round = {step: self._nearest(step, usual(self.tree, step)) for step in order}

    def walk(self) -> float:
        """Return the minutes of one walk."""
        path = list(self._drawn())
        for _ in range(MOST_TRIES):
            try:
                return _Walked(self, path).minutes
            except UsedUpError:
                continue
        raise AssertionError(f"no walk of {self.tree.id} comes through {path}")

    def shares_tries(self) -> bool:
        """Whether ways back of several steps do the same bounded step again."""
        sources: dict[str, set[str]] = {}
        for source, laps in self.by_chance.items():
            for _, (*between, to) in laps:
                usual_way = {one for one in self.passed[source] if to in self.passed[one]}
                for step in usual_way.union(between):
                    sources.setdefault(step, set()).add(source)
        return any(self.allowed[step] and len(found) > 1 for step, found in sources.items())

    def _drawn(self) -> Iterator[On | str]:
        """Draw a walk straight through: ways on, and at the end the step where it ends."""
        step = str(self.tree.start.id)
        while True:
            ways = self.ways[step]
            heavy = [self.weights[id(way.exit)] for way in ways]
            here = self.own.get(step, 0.0)
            if sum(heavy) + here <= 0:
                is_end = not ways or isinstance(self.tree.steps[step].body, Fix | Stop)
                heavy, here = [0.0 if is_end else 1.0] * len(ways), float(is_end)
            (way,) = self.dice.choices([*ways, None], [*heavy, here])
            if way is None or way.target not in self.tree.steps:
                yield step if way is None else way
                return
            yield way
            step = way.target

    def _reached_without(self, left_out: str) -> set[str]:
        waiting, reached = [str(self.tree.start.id)], set[str]()
        while waiting:
            step = waiting.pop()
            if step != left_out and step in self.ways and step not in reached:
                reached.add(step)
                waiting += [way.target for way in self.ways[step]]
        return reached

    def _by_chance(self, step: str) -> Iterator[tuple[float, Lap]]:
        for way in exits(self.tree.steps[step]):
            chance = float(way.result.chance or 0) if way.result else 0.0
            lap = self._nearest(step, [way]) if chance else None
            if lap:
                yield chance, lap

    def _nearest(self, step: str, first: list[Exit]) -> Lap | None:
        return nearest(self.tree, step, first, self.passed[step])


@dataclass
class _Walked:
    """One walk, as it is walked."""

    walker: Walker
    path: list[On | str]
    minutes: float = 0.0
    done: Counter[str] = field(default_factory=Counter)
    using_up: bool = False
    left: set[str] = field(default_factory=set)  # steps that were left by `spent`

    def __post_init__(self) -> None:
        """Walk it."""
        self.steps = [one.source if isinstance(one, On) else one for one in self.path]
        leaving = [one for one in self.path if isinstance(one, On)]
        self.spent = {one.source for one in leaving if one.exit.kind is ExitKind.SPENT}
        for at, step in enumerate(self.steps):
            self._stand(at)
            if step in self.spent:
                self._use_up(at)

    def _do(self, step: str) -> None:
        most = self.walker.allowed[step]
        if most is not None and self.done[step] >= most and not self.using_up:
            raise UsedUpError(step)
        self.done[step] += 1
        self.minutes += self.walker.minutes[step]

    def _stand(self, at: int) -> None:
        """Do a step of the path, and go back from it as often as the dice say."""
        step = self.steps[at]
        self._do(step)
        while step not in self.spent and (lap := self._thrown(step)):
            self._go_round(lap, at)
            self._do(step)

    def _thrown(self, step: str) -> Lap | None:
        """Throw the dice for a way back; one over a step to be used up belongs to its rounds."""
        dice = self.walker.dice.random()
        for chance, lap in self.walker.by_chance[step]:
            if not self.spent.intersection(lap):
                if dice < chance:
                    return lap
                dice -= chance
        return None

    def _go_round(self, lap: Lap, at: int) -> None:
        *between, to = lap
        for step in between:
            self._do(step)
        for again in range(self.steps.index(to), at):
            if self.steps[again] not in self.left:
                self._stand(again)

    def _use_up(self, at: int) -> None:
        """Go round until the step comes up once more than it may be done."""
        step = self.steps[at]
        lap, before = self.walker.round[step], self.done.copy()
        if any(way.kind is ExitKind.BACK for way in exits(self.walker.tree.steps[step])):
            lap = (self.steps[at - 1],)  # back to the step that led here, and to no other
        self.using_up = True
        while lap:
            self._go_round(lap, at)
            if self.done[step] >= (self.walker.allowed[step] or 1):
                break
            self._do(step)
        self.done, self.using_up = before, False
        self.left.add(step)


def allowed(tree: Tree, step: str) -> int | None:
    """Return how often a walk may do a step; None without a bound."""
    words = tree.steps[step]
    listed = tree.lists.get(words.each[1]) if words.each else None
    return int(words.at_most) if words.at_most else len(listed) if listed else None


def minutes(tree: Tree, step: str) -> float:
    """Return the minutes of work of a step, its own or those of the method that it takes."""
    words = tree.steps[step]
    if words.minutes is None and words.same_as in tree.steps:
        words = tree.steps[words.same_as]
    return float(words.minutes or 0)


def usual(tree: Tree, step: str) -> list[Exit]:
    """Return the exits by which a step is left while it is not used up."""
    return [way for way in exits(tree.steps[step]) if way.kind not in (*SELDOM, ExitKind.SPENT)]


def nearest(tree: Tree, source: str, first: list[Exit], passed: frozenset[str]) -> Lap | None:
    """Return the fewest steps back to one passed before, that one last; None if there is none."""
    waiting: deque[tuple[str, str, Exit, tuple[str, ...]]] = deque(
        (source, "", way, ()) for way in first
    )
    seen: set[tuple[str, str]] = set()
    while waiting:
        here, caller, way, between = waiting.popleft()
        for to in _targets(tree, here, caller, way):
            if to in passed:
                return (*between, to)
            if (to, here) in seen:
                continue
            seen.add((to, here))
            waiting.extend((to, here, on, (*between, to)) for on in usual(tree, to))
    return None


def _targets(tree: Tree, here: str, caller: str, way: Exit) -> list[str]:
    if way.kind is ExitKind.BACK:
        return [caller] if caller else []
    if way.kind is ExitKind.NEXT:
        before = [name for name, step in tree.steps.items() if step.each]
        place = list(tree.steps).index(here)
        return [name for name in before if list(tree.steps).index(name) <= place][-1:]
    return [str(way.branch.step)] if way.branch.step in tree.steps else []
