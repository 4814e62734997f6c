"""A step as it is entered: what it needs, what is changed for it, and what holds then.

Once a fix is done everything goes back to normal, before anything is verified.

In: the shop's conditions, the states that hold, a step. Out: a `StepEntry`.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from builder.graph.needed_states import NOTHING_GIVEN, Given, filled, needed_states
from builder.graph.state_changes import Changes, back_to_normal, changes
from builder.graph.vehicle_states import States, excludes, place_of
from builder.model.conditions import Condition, Conditions, VehicleState
from builder.model.ends import Fix
from builder.model.module_record import Fitting
from builder.model.text import Text
from builder.model.tree import Deed, Step


@dataclass(frozen=True, slots=True)
class StepEntry:
    """A step entered in one state of the vehicle."""

    step: Step
    needed: States
    before: Changes  # before the `do` lines
    after: Changes  # after the `do` lines: with `hook_up`, what the step needs
    states: States  # that hold then
    hazards: tuple[Text, ...]  # of the step itself, and of what it installs
    does: tuple[Deed, ...]  # by the step itself, with what a procedure got filled in
    back: Changes = ()  # of a fix: what is put back once it is done

    @property
    def changed(self) -> Changes:
        """Everything that is changed for the step."""
        return (*self.before, *self.after)

    @property
    def changing_does(self) -> tuple[Deed, ...]:
        """What the changes count as."""
        return tuple(deed for change in self.changed for deed in change.does)

    @property
    def back_does(self) -> tuple[Deed, ...]:
        """What going back to normal counts as."""
        return tuple(deed for change in self.back for deed in change.does)


class Planner:
    """The changes of a shop's vehicles; the same ones are asked for again and again, and kept."""

    def __init__(self, conditions: Conditions) -> None:
        """Begin with nothing planned."""
        self.conditions = conditions
        self._planned: dict[tuple[States, States], tuple[Changes, States]] = {}
        self._back: dict[States, Changes] = {}

    def changes(self, now: States, needed: States) -> tuple[Changes, States]:
        """Return what changes so that the needed states hold, and the states that hold then."""
        key = now, needed
        if key not in self._planned:
            self._planned[key] = changes(self.conditions, now, needed)
        return self._planned[key]

    def back(self, now: States) -> Changes:
        """Return what is put back so that everything is normal."""
        if now not in self._back:
            self._back[now], _ = back_to_normal(self.conditions, now)
        return self._back[now]


@lru_cache(maxsize=4)
def planner_of(conditions: tuple[Condition, ...]) -> Planner:
    """Return the planner of a shop's conditions."""
    return Planner({str(one.id): one for one in conditions})


def entry_of(
    planner: Planner,
    now: States,
    step: Step,
    fit: Fitting | None = None,
    given: Given = NOTHING_GIVEN,
) -> StepEntry:
    """Enter a step while some states hold; `fit` is how the module is installed it replaces."""
    needed = needed_states(planner.conditions, step, fit, given)
    before: Changes = ()
    states = now
    if step.hook_up and step.hook_up in planner.conditions:
        hook_up = VehicleState(str(step.hook_up))
        before, states = planner.changes(now, while_hooking_up(planner.conditions, needed, hook_up))
    last, states = planner.changes(states, needed)
    return StepEntry(
        step=step,
        needed=needed,
        before=before if step.hook_up else last,
        after=last if step.hook_up else (),
        states=states,
        hazards=tuple(dict.fromkeys((*step.hazards, *(fit.hazards if fit else ())))),
        does=tuple(_deeds(step, given)),
        back=planner.back(states) if isinstance(step.body, Fix) else (),
    )


def while_hooking_up(conditions: Conditions, needed: States, hook_up: VehicleState) -> States:
    """Return what is needed already while the `do` lines are done."""
    place = place_of(conditions, hook_up)
    others = (
        state
        for state in needed
        if place_of(conditions, state) != place and not excludes(conditions, state, hook_up)
    )
    return (*others, hook_up)


def _deeds(step: Step, given: Given) -> Iterator[Deed]:
    for deed in step.does:
        module = filled(deed.module, given) if deed.module else None
        yield deed if module == deed.module else Deed(deed.text, deed.verb, module)
