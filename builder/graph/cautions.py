"""The cautions of a step: which are shown in full, which as one line, and in what place.

In: how a step is entered, the shop's hazards, and the cautions that were shown on the way. Out:
`StepCautions`. Everything here is pure, so that the walk, the check and the pages agree.

A caution comes before what brings it. In full are those that weren't shown yet, and every DANGER;
the others are one line. After a break or a handoff nothing counts as shown: call with an empty set.
With `hook_up`, what the state brings that is entered after the `do` lines is shown before them, and
again with that state. Of a fix, what is put back once it is done comes last. Paper can't know the
path: `on_paper` gives what a step needs and brings, whatever was done before.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from builder.graph.needed_states import NOTHING_GIVEN, Given, needed_states
from builder.graph.state_changes import Changes
from builder.graph.step_entry import StepEntry
from builder.graph.vehicle_states import States
from builder.model.conditions import Conditions
from builder.model.knowledge import Hazard, Signal
from builder.model.module_record import Fitting
from builder.model.text import Text
from builder.model.tree import Step

Hazards = Mapping[str, Hazard]  # of the shop, by id
Shown = frozenset[str]  # the cautions that were shown in full


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution as it is shown at a step."""

    hazard: str  # its id
    full: bool  # or as one line


@dataclass(frozen=True, slots=True)
class StepCautions:
    """The cautions of a step, in the order in which they are met."""

    changing: tuple[Caution, ...]  # with what is changed before the `do` lines
    standing: tuple[Caution, ...]  # of the states that hold and weren't changed
    own: tuple[Caution, ...]  # of the step, and of what comes after its `do` lines
    after: tuple[Caution, ...]  # again, with what is changed after the `do` lines
    back: tuple[Caution, ...]  # of a fix, with what is put back once it is done
    shown: Shown  # afterward

    @property
    def every(self) -> tuple[Caution, ...]:
        """All of them, in their order."""
        return (*self.changing, *self.standing, *self.own, *self.after, *self.back)


def cautions_at(
    conditions: Conditions, entry: StepEntry, hazards: Hazards, shown: Shown
) -> StepCautions:
    """Return the cautions of a step that is entered after some were shown."""
    page = _Page(hazards, set(shown))
    changing = page.show(hazards_of_changes(entry.before))
    later = hazards_of_changes(entry.after)
    told = {*later, *entry.hazards, *(caution.hazard for caution in changing)}
    holding = hazards_of_states(conditions, entry.states)
    standing = page.show(one for one in holding if one not in told)
    own = page.show((*entry.hazards, *later))
    after = page.show(later)
    back = page.show(hazards_of_changes(entry.back))
    return StepCautions(changing, standing, own, after, back, frozenset(page.shown))


def cautions_back_to_normal(made: Changes, hazards: Hazards, shown: Shown) -> tuple[Caution, ...]:
    """Return the cautions with what is put back at an end, a handoff or a break."""
    return _Page(hazards, set(shown)).show(hazards_of_changes(made))


def on_paper(
    conditions: Conditions, step: Step, fit: Fitting | None = None, given: Given = NOTHING_GIVEN
) -> tuple[States, tuple[str, ...]]:
    """Return the states that a step needs, and the hazards of these and of the step itself."""
    states = needed_states(conditions, step, fit, given)
    own = (*step.hazards, *(fit.hazards if fit else ()))
    return states, tuple(dict.fromkeys((*hazards_of_states(conditions, states), *map(str, own))))


def hazards_of_states(conditions: Conditions, states: States) -> tuple[str, ...]:
    """Return the hazards of some states, each once."""
    return _each_once(one for state in states for one in conditions[state.condition].hazards)


def hazards_of_changes(made: Changes) -> tuple[str, ...]:
    """Return the hazards that come with some changes, each once."""
    return _each_once(one for change in made for one in change.hazards)


def _each_once(hazards: Iterable[Text]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(map(str, hazards)))


class _Page:
    """What was shown so far."""

    def __init__(self, hazards: Hazards, shown: set[str]) -> None:
        self.hazards, self.shown = hazards, shown

    def show(self, names: Iterable[str]) -> tuple[Caution, ...]:
        return tuple(self._caution(name) for name in dict.fromkeys(map(str, names)))

    def _caution(self, name: str) -> Caution:
        known = self.hazards.get(name)
        full = name not in self.shown or (known is not None and known.signal is Signal.DANGER)
        self.shown.add(name)
        return Caution(name, full)
