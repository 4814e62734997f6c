"""Where a walk can go next, through procedures and verifications, and in which state.

In: a tree and what the shop knows. Out: a `Follower`, which lists the moves from a `Place` and
notes how each step is entered. Once a fix is done everything goes back to normal, and again before
each further verification; a verification that failed goes on from the states that it left.
"""

from collections.abc import Iterator

from builder.graph.moves import Call, Move, Place
from builder.graph.needed_states import fitting_of
from builder.graph.routes import Exit, ExitKind, Route
from builder.graph.run_frames import Calls, Frame, Frames, PathKnowledge
from builder.graph.step_entry import StepEntry, entry_of
from builder.graph.vehicle_states import States
from builder.model.checks import Branch, Check
from builder.model.ends import Fix, Return
from builder.model.procedures import Procedure
from builder.model.text import Text
from builder.model.tree import Step, Tree

NORMAL: States = ()


class Follower:
    """The moves from every place of a tree."""

    def __init__(self, tree: Tree, known: PathKnowledge) -> None:
        """Begin with nothing entered."""
        self.known = known
        self.entries: dict[Place, StepEntry] = {}
        self._frames = Frames(tree, known)

    def step_at(self, place: Place) -> Step:
        """Return the step of a place, in the tree or in a procedure."""
        return self._frames.frame(place.calls).tree.steps[place.step]

    def moves_from(self, place: Place) -> Iterator[Move]:
        """Yield every move from a place, also those by `spent`."""
        frame = self._frames.frame(place.calls)
        step = frame.tree.steps[place.step]
        fit = fitting_of(self.known.modules, step)
        entry = entry_of(self.known.planner, place.states, step, fit, frame.given)
        self.entries[place] = entry
        procedure = self._frames.procedure(frame, step)
        if procedure:
            yield from self._into(place, frame, procedure)
        elif frame.verifies_step:
            yield from self._verified(place, place.calls, entry.states)
        elif isinstance(step.body, Return):
            yield from self._returned(place, place.calls, _exit(step.text), entry.states)
        elif isinstance(step.body, Fix):
            yield from self._to_verify(place, step)
        else:
            yield from self._usual(place, frame, step, entry.states)

    def _usual(self, place: Place, frame: Frame, step: Step, states: States) -> Iterator[Move]:
        moves = tuple(frame.moves.moves_from(Place(place.step, place.caller)))
        for move in moves:
            is_spent = move.route.exit.kind is ExitKind.SPENT
            yield from self._onward(place, move, place.calls, place.states if is_spent else states)
        if isinstance(step.body, Check) and step.body.cannot_test is None:
            yield from self._not_done(place, place.calls, states)
        if not moves and not isinstance(step.body, Check):
            yield _end(place)

    def _onward(
        self, place: Place, move: Move, calls: Calls, states: States, by: Exit | None = None
    ) -> Iterator[Move]:
        """Yield a move of the tree or procedure that is run, as made from a place inside it.

        `by` is how the place itself is left, where that is not the exit of the move.
        """
        exit_ = by or move.route.exit
        if move.route.exit.branch.returns:
            yield from self._returned(place, calls, exit_, states, str(move.route.exit.branch.text))
        else:
            to = move.to and Place(move.to.step, move.to.caller, calls, states)
            yield Move(place, to, Route(place.step, to.step if to else None, exit_))

    def _into(self, place: Place, frame: Frame, procedure: Procedure) -> Iterator[Move]:
        """Yield the move into a procedure, and those past it."""
        calls = (*place.calls, Call(place.step))
        given = set(self._frames.frame(calls).given.values())
        if not given.intersection(map(str, procedure.never_on)):
            start = procedure.tree.start.id
            exit_ = Exit(ExitKind.RUN, Branch(start, str(start)))
            to = Place(str(start), None, calls, place.states)
            yield Move(place, to, Route(place.step, to.step, exit_))
        if procedure.never_on and any(one in procedure.never_on or "<" in one for one in given):
            yield from self._not_done(place, calls, place.states)
        for move in frame.moves.moves_from(Place(place.step, place.caller)):
            if move.route.exit.kind is ExitKind.SPENT:
                yield from self._onward(place, move, place.calls, place.states)

    def _returned(
        self, place: Place, calls: Calls, exit_: Exit, states: States, word: str = ""
    ) -> Iterator[Move]:
        """Yield the moves by which a procedure returns a word to the step that calls it."""
        word = word or str(exit_.branch.text)
        if not calls:
            yield _end(place, exit_)
            return
        outer = calls[:-1]
        if calls[-1].verification is not None:
            yield from self._verified(place, calls, states)
        elif self._frames.frame(outer).verifies_step:
            yield from self._verified(place, outer, states)
        else:
            for move in self._moves_of_caller(calls):
                result = move.route.exit.result
                if result and str(result.text) == word:
                    yield from self._onward(place, move, outer, states, exit_)

    def _moves_of_caller(self, calls: Calls) -> Iterator[Move]:
        yield from self._frames.frame(calls[:-1]).moves.moves_from(Place(calls[-1].step))

    def _not_done(self, place: Place, calls: Calls, states: States) -> Iterator[Move]:
        """Yield the move of what can't be done, by the nearest `cannot_test` further out.

        Of a step that is done alone, to verify a fix, it isn't taken: the verification failed.
        """
        while calls:
            outer, call = calls[:-1], calls[-1]
            if call.verification is not None:
                yield from self._verified(place, calls, states)
                return
            alone = self._frames.frame(outer).verifies_step
            for move in () if alone else self._moves_of_caller(calls):
                if move.route.exit.kind is ExitKind.CANNOT_TEST:
                    yield from self._onward(place, move, outer, states)
                    return
            calls = outer

    def _to_verify(self, place: Place, fix: Step) -> Iterator[Move]:
        assert isinstance(fix.body, Fix)
        if self._frames.items(self._frames.frame(place.calls), fix):
            yield self._verifying(place, (*place.calls, Call(place.step, 0)), NORMAL)
        else:
            yield _end(place)
        if not all(one.is_named for one in fix.body.verify):
            yield from self._failed(place, place.calls, fix, NORMAL)

    def _verifying(self, place: Place, calls: Calls, states: States) -> Move:
        frame = self._frames.frame(calls)
        assert frame.item
        name = frame.item.name if frame.item.is_step else str(frame.tree.start.id)
        exit_ = Exit(ExitKind.VERIFY, Branch(frame.item.text, name))
        return Move(place, Place(name, None, calls, states), Route(place.step, name, exit_))

    def _verified(self, place: Place, calls: Calls, states: States) -> Iterator[Move]:
        """Yield the moves after one part of a verification: to the next, the end, back to work."""
        outer, call = calls[:-1], calls[-1]
        frame = self._frames.frame(outer)
        fix, number = frame.tree.steps[call.step], (call.verification or 0) + 1
        items = self._frames.items(frame, fix)
        if number < len(items):
            begun = NORMAL if items[number].from_normal else states
            yield self._verifying(place, (*outer, Call(call.step, number)), begun)
        else:
            yield _end(place)
        if items[number - 1].may_fail:
            yield from self._failed(place, outer, fix, states)

    def _failed(self, place: Place, calls: Calls, fix: Step, states: States) -> Iterator[Move]:
        """Yield where a walk goes on when the fault is still there."""
        frame = self._frames.frame(calls)
        moves = tuple(frame.moves.moves_from(Place(str(fix.id))))
        for move in moves:
            yield from self._onward(place, move, calls, states)
        checks = [one for one in self._frames.items(frame, fix) if one.is_step and one.may_fail]
        if checks and not moves:
            exit_ = Exit(ExitKind.STILL_THERE, Branch(checks[0].text, checks[0].name))
            to = Place(checks[0].name, None, calls, states)
            yield Move(place, to, Route(place.step, to.step, exit_))


def _exit(word: Text) -> Exit:
    return Exit(ExitKind.THEN, Branch(word, returns=True))


def _end(place: Place, exit_: Exit | None = None) -> Move:
    return Move(place, None, Route(place.step, None, exit_ or _exit(Text(""))))
