"""The retry loops of a tree: back to an earlier step, and forward from there by the usual path.

In: a `Tree` and its `ForwardGraph`. Out: `RetryLoops`: those taken by chance, and those that a walk
has completed when it leaves a step by `spent`.

A step is spent when a walk comes to it once more than `at_most` allows. The share of the walks that
leave it by `spent` is the sum of the weights of the ends beyond it. Those walks have done the step
`at_most` times and have gone around as often. The other walks have not spent it: of them

    c**k / (1 + c + c**2 + ... + c**n)

have gone around k times, where c is the chance of the edge back and n the number of iterations that
spend nothing (see `iterations`). By the chance, c**(n + 1) of the walks spend the step. If that and
the weights are more than twofold apart, the check reports it (rule `chance-against-weights`). An
edge back without a chance is taken only by the walks that leave by `spent`.
"""

from collections import deque
from collections.abc import Container, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from builder.graph.moves import Move, Moves, Place, moves_of
from builder.graph.routes import ExitKind, exits
from builder.model.tree import Tree
from builder.plan.forward_graph import ForwardGraph
from builder.plan.iterations import VisitLimit, expected_iterations

ExitKey = tuple[str, int]  # a step, and the index of an exit among its `exits`
NOT_FOLLOWED = frozenset({ExitKind.SPENT, ExitKind.STILL_THERE, ExitKind.CANNOT_TEST})


@dataclass(frozen=True, slots=True)
class RetryLoop:
    """One loop: from a step through others back to an earlier one, and forward to it again."""

    source: str
    back: tuple[ExitKey, ...]  # the exits of the path back, that of the source first
    to: str  # the earlier step, or the source itself
    iterations: Fraction  # on average; by `spent`, always

    @property
    def between(self) -> tuple[str, ...]:
        """The steps done on the path back."""
        return tuple(step for step, _ in self.back[1:])


@dataclass(frozen=True, slots=True)
class RetryLoops:
    """The loops of a tree by the step from which they lead back."""

    by_chance: Mapping[str, tuple[RetryLoop, ...]]
    # By the source of loops: the limited steps that they spend, and in what share of its walks.
    spent_shares: Mapping[str, Mapping[str, Fraction]]
    by_spent: Mapping[str, RetryLoop]
    dominators: Mapping[str, frozenset[str]]  # steps that every walk to a step passes, and itself


def find_retry_loops(tree: Tree, graph: ForwardGraph) -> RetryLoops:
    """Find the loops of a tree; of several paths back, the one with the fewest steps counts."""
    dominators = _dominators(graph)
    moves = moves_of(tree)
    by_chance = {step: _loops_by_chance(tree, moves, step, dominators) for step in graph.order}
    by_spent: dict[str, RetryLoop] = {}
    for step in graph.order:
        usual = (
            move
            for move in moves.moves_from(Place(step))
            if move.route.exit.kind not in NOT_FOLLOWED
        )
        path = _path_back(tree, moves, usual, dominators[step]) if tree.steps[step].spent else None
        if path:
            by_spent[step] = RetryLoop(step, *path, Fraction(max_visits(tree, step) or 1))
    return RetryLoops(
        by_chance={step: loops for step, (loops, _) in by_chance.items() if loops},
        spent_shares={step: shares for step, (loops, shares) in by_chance.items() if loops},
        by_spent=by_spent,
        dominators=dominators,
    )


def max_visits(tree: Tree, step: str) -> int | None:
    """Return how often one walk may do a step: `at_most`, or the length of its list if known."""
    body = tree.steps[step]
    if body.at_most is not None:
        return int(body.at_most)
    items = tree.lists.get(body.each[1]) if body.each else None
    return len(items) if items else None


def _dominators(graph: ForwardGraph) -> dict[str, frozenset[str]]:
    dominators: dict[str, frozenset[str]] = {}
    for step in graph.order:
        before = [dominators[edge.source] for edge in graph.incoming[step]]
        shared = frozenset.intersection(*before) if before else ()
        dominators[step] = frozenset({step}).union(shared)
    return dominators


def _loops_by_chance(
    tree: Tree, moves: Moves, step: str, dominators: Mapping[str, frozenset[str]]
) -> tuple[tuple[RetryLoop, ...], Mapping[str, Fraction]]:
    """Return the loops of the results with a chance, and how often they spend a limited step.

    A result that doesn't lead back to an earlier step is not a loop.
    """
    paths: list[tuple[tuple[ExitKey, ...], str]] = []
    chances: list[Fraction] = []
    passed = dominators[step]
    for move in moves.moves_from(Place(step)):
        result = move.route.exit.result
        if result and result.chance and (path := _path_back(tree, moves, [move], passed)):
            paths.append(path)
            chances.append(Fraction(result.chance))
    if not paths:
        return (), {}
    walked = sorted(passed, key=lambda one: len(dominators[one]))  # from the start to this step
    done = [
        (*(between for between, _ in back[1:]), *walked[walked.index(to) :]) for back, to in paths
    ]
    iterations = expected_iterations(chances, list(_visit_limits(tree, done, passed)))
    loops = zip(paths, iterations.mean, strict=True)
    return tuple(RetryLoop(step, back, to, n) for (back, to), n in loops), iterations.spent


def _path_back(
    tree: Tree, moves: Moves, first: Iterable[Move], passed: frozenset[str]
) -> tuple[tuple[ExitKey, ...], str] | None:
    """Return the exits that lead back to the first step that was passed earlier, and that step.

    Where a step with a text error leads is not known, so no path goes on from it.
    """
    queue: deque[tuple[Move, tuple[Move, ...]]] = deque((move, ()) for move in first)
    seen: set[Place] = set()
    while queue:
        move, before = queue.popleft()
        place = move.to
        if place is None or place in seen or move.source.step in tree.broken:
            continue
        if place.step in passed:
            return tuple(_key(tree, one) for one in (*before, move)), place.step
        seen.add(place)
        queue += [
            (following, (*before, move))
            for following in moves.moves_from(place)
            if following.route.exit.kind not in NOT_FOLLOWED
        ]
    return None


def _key(tree: Tree, move: Move) -> ExitKey:
    step = move.source.step
    return step, exits(tree.steps[step]).index(move.route.exit)


def _visit_limits(
    tree: Tree, loops: Sequence[Sequence[str]], passed: Container[str]
) -> Iterator[VisitLimit]:
    """Yield the visits that `at_most` leaves for loops; a step passed earlier was done once."""
    steps_of = [frozenset(loop) for loop in loops]
    for step in dict.fromkeys(step for loop in loops for step in loop):
        most = max_visits(tree, step)
        if most:
            with_step = frozenset(at for at, steps in enumerate(steps_of) if step in steps)
            yield VisitLimit(step, most - (step in passed), with_step)
