"""What a procedure has done by each word that it returns, on all paths to it.

In: a procedure's tree, the runs of its own steps filled in. Out: its deeds. What it has certainly
done counts, and so does what may have been undone: after `release-supply` on one path nobody can
rely on the supply.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from builder.graph.deeds import Effect, all_deeds, deeds_done, unmet_deeds
from builder.graph.moves import Move, Place
from builder.graph.precedence import MoveTest, ReachedUnmet, reached_unmet, with_effect
from builder.graph.requirements import REQUIREMENTS, Requirement
from builder.graph.tree_graph import TreeGraph, graph_of
from builder.model.ends import Return
from builder.model.tree import Deed, Outcome, ProcedureRun, Tree

Deeds = tuple[Deed, ...]


def run_with_deeds(tree: Tree, words: Iterable[str]) -> ProcedureRun:
    """Return a run with the deeds of a procedure, and no figures yet."""
    every = (deed for step in tree.steps.values() for deed in all_deeds(step))
    may_do = _each_once(every)
    paths = _Paths(tree, graph_of(tree, ()))
    return ProcedureRun(
        outcomes={word: Outcome(tuple(_done(paths, may_do, word))) for word in words},
        may_do=may_do,
        unmet={one.name: deeds for one in REQUIREMENTS if (deeds := _unmet(paths, one))},
    )


def _each_once(deeds: Iterable[Deed]) -> Deeds:
    return tuple({str(deed.text): deed for deed in deeds}.values())


def _done(paths: "_Paths", may_do: Deeds, word: str) -> Iterator[Deed]:
    """Yield what may have been undone, then what is met or set up on every path to a word."""
    for deed in may_do:
        undone = (one for one in REQUIREMENTS if deed.verb in one.undone_by)
        if any(paths.may_return_unmet(word, one, met_before=True) for one in undone):
            yield deed
    yield from (deed for deed in may_do if _is_done(paths, word, deed))


def _is_done(paths: "_Paths", word: str, deed: Deed) -> bool:
    if deed.is_setup:
        return not paths.may_return_without(word, deed)
    met = (_at(one, deed.module) for one in REQUIREMENTS if deed.verb == one.met_by)
    return any(not paths.may_return_unmet(word, one, met_before=False) for one in met)


def _at(requirement: Requirement, part: str | None) -> Requirement:
    return requirement.at(part) if part else requirement


def _unmet(paths: "_Paths", requirement: Requirement) -> Deeds:
    """Return what is done before a requirement is met, if it wasn't met at the start.

    What is done unmet even if it was met is a finding of the procedure itself.
    """
    own = paths.reached(requirement, met_before=True).arrived_by
    places = paths.reached(requirement, met_before=False).arrived_by
    steps = dict.fromkeys(place.step for place in places if place not in own)
    return _each_once(
        deed for name in steps for deed in unmet_deeds(paths.tree.steps[name], requirement)
    )


@dataclass(frozen=True, slots=True)
class _Paths:
    """Every path through a procedure."""

    tree: Tree
    graph: TreeGraph

    def reached(self, requirement: Requirement, met_before: bool) -> ReachedUnmet:
        """Return where a walk arrives unmet, if it was met before the procedure or not."""
        meets = with_effect(self.tree.steps, requirement, Effect.MET)
        undoes = with_effect(self.tree.steps, requirement, Effect.UNDONE)
        undoing = [move for move in self.graph.moves if undoes(move)]
        starts = () if met_before else self.graph.starts
        return reached_unmet(self.graph.moves_from, starts, meets, undoing)

    def may_return_unmet(self, word: str, requirement: Requirement, met_before: bool) -> bool:
        """Whether some path to a word leaves a requirement unmet."""
        meets = with_effect(self.tree.steps, requirement, Effect.MET)
        undoes = with_effect(self.tree.steps, requirement, Effect.UNDONE)
        if any(_says(move, word) and undoes(move) for move in self.graph.moves):
            return True
        return self._returns(word, self.reached(requirement, met_before), meets)

    def may_return_without(self, word: str, deed: Deed) -> bool:
        """Whether some path to a word doesn't do a deed."""

        def does_it(move: Move) -> bool:
            done = deeds_done(self.tree.steps[move.source.step], move.route.exit)
            return any((one.verb, one.module) == (deed.verb, deed.module) for one in done)

        reached = reached_unmet(self.graph.moves_from, self.graph.starts, does_it)
        return self._returns(word, reached, does_it)

    def _returns(self, word: str, reached: ReachedUnmet, meets: MoveTest) -> bool:
        """Whether a word is returned at a reached place, or from one by a move that isn't met."""
        places = reached.arrived_by
        moves = (move for place in places for move in self.graph.moves_from[place])
        return any(self._ends_with(place, word) for place in places) or any(
            _says(move, word) and not meets(move) for move in moves
        )

    def _ends_with(self, place: Place, word: str) -> bool:
        step = self.tree.steps[place.step]
        return isinstance(step.body, Return) and step.text == word


def _says(move: Move, word: str) -> bool:
    branch = move.route.exit.branch
    return branch.returns and branch.text == word
