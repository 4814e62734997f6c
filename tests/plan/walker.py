"""Random walks through a tree, written from the definition of the format.

In: a `Tree` and a source of random numbers. Out: the minutes of one walk after another. This module
doesn't use `builder.plan`, so its exact figures can be compared with the average of many walks.

First a walk is drawn by the weights: which edge at each step, and so where it ends. Then it is
walked: every visit to a step may take a loop by its `chance`; then come the steps of the loop and
the same path again. A step is done as often as `at_most` allows; a walk that would spend a step
without leaving by its `spent` is drawn again. A walk that leaves by `spent` has gone around as
often as allowed; visits to other steps on those loops don't count toward their limits.

A step that runs a procedure takes as long as a walk through the procedure to the word by which the
step is left; that walk is drawn the same way.
"""

from collections import Counter, deque
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from random import Random

from builder.graph.routes import Exit, ExitKind, exits
from builder.model.checks import Check
from builder.model.ends import Ending, Return
from builder.model.tree import Tree

from .edges_forward import UNUSUAL, Edge, edges_forward, end_weights

MAX_TRIES = 10_000  # of one walk, until it spends nothing
LoopSteps = tuple[str, ...]  # the steps on the path back; the last is the one it leads back to


class SpentError(Exception):
    """A step came up once more than it may be done."""


@dataclass
class Walker:
    """A tree, prepared for many walks."""

    tree: Tree
    random: Random
    procedures: Mapping[str, Tree] = field(default_factory=dict)
    word: str = ""  # of a procedure: only walks that return it are drawn

    def __post_init__(self) -> None:
        """Find the edges forward, their weights, and every loop."""
        steps = list(map(str, self.tree.steps))
        order, self.edges = edges_forward(self.tree)
        self.own, self.weights = end_weights(
            self.tree, order, self.edges, self.word, self._parts_of_words
        )
        self.inner: dict[tuple[str, str], Walker] = {}
        self.minutes = {step: minutes(self.tree, step) for step in steps}
        self.allowed = {step: allowed(self.tree, step) for step in steps}
        self.passed = {
            step: frozenset(other for other in order if step not in self._reached_without(other))
            for step in order
        }
        self.by_chance = {step: list(self._by_chance(step)) for step in order}
        self.loop_when_spent = {step: self._nearest(step, usual(self.tree, step)) for step in order}

    def walk(self) -> float:
        """Return the minutes of one walk."""
        path = list(self._drawn())
        for _ in range(MAX_TRIES):
            try:
                return _Walked(self, path).minutes
            except SpentError:
                continue
        raise AssertionError(f"no walk of {self.tree.id} comes through {path}")

    def inside(self, step: str, word: str) -> float:
        """Return the minutes of one walk through the procedure of a step, to a word."""
        body = self.tree.steps[step].body
        by = str(body.by) if isinstance(body, Check) and body.by else ""
        if by not in self.procedures:
            return 0.0
        if (by, word) not in self.inner:
            tree = self.procedures[by]
            self.inner[by, word] = Walker(tree, self.random, self.procedures, word)
        return self.inner[by, word].walk()

    def _parts_of_words(self, step: str) -> Mapping[str, float]:
        """Return how often the procedure of a step returns each word, by its own results."""
        body = self.tree.steps[step].body
        by = str(body.by) if isinstance(body, Check) and body.by else ""
        if by not in self.procedures:
            return {}
        return Walker(self.procedures[by], self.random, self.procedures).words()

    def words(self) -> dict[str, float]:
        """Return how often a walk returns each word."""
        passed = {str(self.tree.start.id): 1.0}
        words: Counter[str] = Counter()
        for step, edges in self.edges.items():
            total = sum(self.weights[id(edge.exit)] for edge in edges)
            if isinstance(self.tree.steps[step].body, Return):
                words[str(self.tree.steps[step].text)] += passed.get(step, 0.0)
            for edge in edges:
                share = self.weights[id(edge.exit)] / total if total else 1 / len(edges)
                if edge.exit.branch.returns:
                    words[str(edge.exit.branch.text)] += passed.get(step, 0.0) * share
                passed[edge.target] = passed.get(edge.target, 0.0) + passed.get(step, 0.0) * share
        return dict(words)

    def shares_tries(self) -> bool:
        """Whether loops from several steps do the same limited step again."""
        sources: dict[str, set[str]] = {}
        for source, loops in self.by_chance.items():
            for _, (*between, to), _ in loops:
                forward = {step for step in self.passed[source] if to in self.passed[step]}
                for step in forward.union(between):
                    sources.setdefault(step, set()).add(source)
        return any(self.allowed[step] and len(of_step) > 1 for step, of_step in sources.items())

    def _drawn(self) -> Iterator[Edge | str]:
        """Draw a walk without loops: its edges, and last the step where it ends."""
        step = str(self.tree.start.id)
        while True:
            edges = self.edges[step]
            weights = [self.weights[id(edge.exit)] for edge in edges]
            here = self.own.get(step, 0.0)
            if sum(weights) + here <= 0:
                is_end = not edges or isinstance(self.tree.steps[step].body, Ending)
                weights, here = [0.0 if is_end else 1.0] * len(edges), float(is_end)
            (edge,) = self.random.choices([*edges, None], [*weights, here])
            if edge is None or edge.target not in self.tree.steps:
                yield step if edge is None else edge
                return
            yield edge
            step = edge.target

    def _reached_without(self, left_out: str) -> set[str]:
        stack, reached = [str(self.tree.start.id)], set[str]()
        while stack:
            step = stack.pop()
            if step != left_out and step in self.edges and step not in reached:
                reached.add(step)
                stack += [edge.target for edge in self.edges[step]]
        return reached

    def _by_chance(self, step: str) -> Iterator[tuple[float, LoopSteps, str]]:
        for exit_ in exits(self.tree.steps[step]):
            chance = float(exit_.result.chance or 0) if exit_.result else 0.0
            loop = self._nearest(step, [exit_]) if chance else None
            if loop:
                yield chance, loop, str(exit_.result.text)

    def nearest_from(self, step: str, exit_: Exit) -> LoopSteps | None:
        """Return the loop that an exit of a step takes, if it takes one."""
        return self._nearest(step, [exit_])

    def _nearest(self, step: str, first: list[Exit]) -> LoopSteps | None:
        return nearest(self.tree, step, first, self.passed[step])


@dataclass
class _Walked:
    """One walk in progress."""

    walker: Walker
    path: list[Edge | str]
    minutes: float = 0.0
    done: Counter[str] = field(default_factory=Counter)
    spending: bool = False
    left: set[str] = field(default_factory=set)  # steps that were left by `spent`

    def __post_init__(self) -> None:
        """Walk it."""
        self.steps = [item.source if isinstance(item, Edge) else item for item in self.path]
        edges = [item for item in self.path if isinstance(item, Edge)]
        self.spent = {edge.source for edge in edges if edge.exit.kind is ExitKind.SPENT}
        for at, step in enumerate(self.steps):
            self._visit(at)
            if step in self.spent:
                self._spend(at)

    def _do(self, step: str) -> None:
        most = self.walker.allowed[step]
        if most is not None and self.done[step] >= most and not self.spending:
            raise SpentError(step)
        self.done[step] += 1
        self.minutes += self.walker.minutes[step]

    def _visit(self, at: int) -> None:
        """Do a step of the path, and take its loops as often as drawn."""
        step = self.steps[at]
        self._do(step)
        while step not in self.spent and (drawn := self._drawn_loop(step)):
            loop, word = drawn
            self.minutes += self.walker.inside(step, word)
            self._go_around(loop, at)
            self._do(step)
        edge = self.path[at]
        if step not in self.spent and isinstance(edge, Edge) and edge.exit.result:
            self.minutes += self.walker.inside(step, str(edge.exit.result.text))

    def _drawn_loop(self, step: str) -> tuple[LoopSteps, str] | None:
        """Draw a loop, or none; a loop through a step to be spent belongs to its own loops."""
        number = self.walker.random.random()
        for chance, loop, word in self.walker.by_chance[step]:
            if not self.spent.intersection(loop):
                if number < chance:
                    return loop, word
                number -= chance
        return None

    def _go_around(self, loop: LoopSteps, at: int) -> None:
        *between, to = loop
        for step in between:
            self._do(step)
        for again in range(self.steps.index(to), at):
            if self.steps[again] not in self.left:
                self._visit(again)

    def _spend(self, at: int) -> None:
        """Go around until the step comes up once more than it may be done."""
        step = self.steps[at]
        loop, before = self.walker.loop_when_spent[step], self.done.copy()
        if any(exit_.kind is ExitKind.BACK for exit_ in exits(self.walker.tree.steps[step])):
            loop = (self.steps[at - 1],)  # back to the step that led here, and to no other
        self.spending = True
        while loop:
            self.minutes += self.walker.inside(step, self._word_back(step, loop))
            self._go_around(loop, at)
            if self.done[step] >= (self.walker.allowed[step] or 1):
                break
            self._do(step)
        self.done, self.spending = before, False
        self.left.add(step)

    def _word_back(self, step: str, loop: LoopSteps) -> str:
        """Return the first word that leads back to the loop."""
        for exit_ in usual(self.walker.tree, step):
            if self.walker.nearest_from(step, exit_) == loop and exit_.result:
                return str(exit_.result.text)
        return ""


def allowed(tree: Tree, step: str) -> int | None:
    """Return how often a walk may do a step; None without a limit."""
    body = tree.steps[step]
    items = tree.lists.get(body.each[1]) if body.each else None
    return int(body.at_most) if body.at_most else len(items) if items else None


def minutes(tree: Tree, step: str) -> float:
    """Return the minutes of work of a step, its own or those of its method."""
    body = tree.steps[step]
    if body.minutes is None and body.same_as in tree.steps:
        body = tree.steps[body.same_as]
    return float(body.minutes or 0)


def usual(tree: Tree, step: str) -> list[Exit]:
    """Return the exits by which a step is left before it is spent."""
    kinds = (*UNUSUAL, ExitKind.SPENT)
    return [exit_ for exit_ in exits(tree.steps[step]) if exit_.kind not in kinds]


def nearest(tree: Tree, source: str, first: list[Exit], passed: frozenset[str]) -> LoopSteps | None:
    """Return the fewest steps back to one passed earlier, that one last; None if there is none."""
    queue: deque[tuple[str, str, Exit, tuple[str, ...]]] = deque(
        (source, "", exit_, ()) for exit_ in first
    )
    seen: set[tuple[str, str]] = set()
    while queue:
        here, caller, exit_, between = queue.popleft()
        for to in _targets(tree, here, caller, exit_):
            if to in passed:
                return (*between, to)
            if (to, here) in seen:
                continue
            seen.add((to, here))
            queue.extend((to, here, following, (*between, to)) for following in usual(tree, to))
    return None


def _targets(tree: Tree, here: str, caller: str, exit_: Exit) -> list[str]:
    if exit_.kind is ExitKind.BACK:
        return [caller] if caller else []
    if exit_.kind is ExitKind.NEXT:
        before = [name for name, step in tree.steps.items() if step.each]
        place = list(tree.steps).index(here)
        return [name for name in before if list(tree.steps).index(name) <= place][-1:]
    return [str(exit_.branch.step)] if exit_.branch.step in tree.steps else []
