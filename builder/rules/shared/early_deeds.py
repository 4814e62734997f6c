"""What is done before what must come first, on some path of a tree.

In: the facts of a tree and a requirement. Out: `EarlyDeed`s, each with its path. What states of the
vehicle count as, such as `hold-supply`, is read from the changes on the way into each step, inside
procedures too. A tree that names no state is followed step by step.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from builder.graph.deeds import Effect, is_met_after, leaves_done, unmet_deeds
from builder.graph.moves import Move, Place
from builder.graph.precedence import MoveTest, reached_unmet
from builder.graph.requirements import Requirement
from builder.graph.routes import ExitKind
from builder.graph.step_entry import StepEntry
from builder.graph.vehicle_paths import VehiclePaths, names_states
from builder.model.finding import Related
from builder.model.text import Position
from builder.model.tree import Deed
from builder.rules.shared.order import (
    deed_as_text,
    entering_handoffs,
    is_met_at_start,
    path_as_text,
    reached_steps,
    unmet,
)
from builder.rules.shared.rule import Facts
from builder.rules.shared.state_witness import names_in_words, own_step, shown_at

Entries = Mapping[Place, StepEntry]


@dataclass(frozen=True, slots=True)
class EarlyDeed:
    """Something that is done too early."""

    deed: Deed
    at: Position
    words: str  # as a message quotes it
    path: str  # the steps that lead there
    related: tuple[Related, ...] = ()


def early_deeds(facts: Facts, requirement: Requirement) -> Iterator[EarlyDeed]:
    """Yield everything that needs a requirement and is done without it.

    Where a mistake elsewhere leaves open which states hold, nothing is said.
    """
    paths = facts.paths()
    if paths is not None:
        yield from _along(facts, paths, requirement)
    elif not names_states(facts.tree):
        yield from _by_step(facts, requirement)


def _by_step(facts: Facts, requirement: Requirement) -> Iterator[EarlyDeed]:
    if not any(True for step in facts.steps for _ in unmet_deeds(step, requirement)):
        return
    reached = unmet(facts, requirement)
    for step, place in reached_steps(reached, facts):
        for deed in unmet_deeds(step, requirement):
            handoffs = tuple(entering_handoffs(facts, reached, place))
            words, path = deed_as_text(step, deed), path_as_text(reached, place)
            yield EarlyDeed(deed, deed.text.at, words, path, handoffs)


def _along(facts: Facts, paths: VehiclePaths, requirement: Requirement) -> Iterator[EarlyDeed]:
    entries = paths.entries
    needing = [place for place, entry in entries.items() if [*_too_early(entry, requirement)]]
    if not needing:
        return
    starts = [one for one in paths.starts if not is_met_at_start(facts, one, requirement)]
    undoes = _with_effect(entries, requirement, Effect.UNDONE)
    every = (move for moves in paths.moves_from.values() for move in moves)
    undoing = [move for move in every if undoes(move)] if requirement.undone_by else []
    meets = _with_effect(entries, requirement, Effect.MET)
    reached = reached_unmet(paths.moves_from, starts, meets, undoing)
    told: set[tuple[str, str]] = set()
    for place in needing:
        if place not in reached.arrived_by:
            continue
        path = names_in_words(reached.places_to(place))
        for deed in _too_early(entries[place], requirement):
            key = own_step(facts, place).id, str(deed.text)
            if key not in told:
                told.add(key)
                at = _where(facts, place, entries[place], deed)
                yield EarlyDeed(deed, at, _words(facts, place, deed), path)


def _too_early(entry: StepEntry, requirement: Requirement) -> Iterator[Deed]:
    """Yield what a step does, if it is reached unmet, before it has met the requirement itself."""
    deeds = (*entry.changing_does, *entry.does, *entry.back_does)
    for number, deed in enumerate(deeds):
        needs_it = deed.verb in requirement.needed_by
        if needs_it and not is_met_after(deeds[:number], requirement, before=False):
            yield deed


def _with_effect(entries: Entries, requirement: Requirement, wanted: Effect) -> MoveTest:
    def has_it(move: Move) -> bool:
        entry, exit_ = entries.get(move.source), move.route.exit
        if entry is None:
            return wanted is Effect.KEPT
        changing = () if exit_.kind is ExitKind.SPENT else entry.changing_does
        own = entry.does if leaves_done(entry.step, exit_) else ()
        if is_met_after((*changing, *own, *entry.back_does), requirement, before=False):
            return wanted is Effect.MET
        begun = (*changing, *entry.does, *entry.back_does)
        kept = is_met_after(begun, requirement, before=True)
        return wanted is (Effect.KEPT if kept else Effect.UNDONE)

    return has_it


def _where(facts: Facts, place: Place, entry: StepEntry, deed: Deed) -> Position:
    """Return where a deed is written in the tree, or the state that counts as it."""
    if place.calls:
        return shown_at(facts, place).at
    if deed in entry.does:
        return deed.text.at
    states = {
        state.condition
        for change in entry.changed
        if deed in change.does
        for state in (change.entered, change.left)
        if state
    }
    named = (need.condition for need in entry.step.needs if need.condition in states)
    return next(named, entry.step.text).at


def _words(facts: Facts, place: Place, deed: Deed) -> str:
    return f"`{deed.text}` in `{shown_at(facts, place)}`" if place.calls else f"`{deed.text}`"
