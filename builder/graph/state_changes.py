"""What is changed at the vehicle between two steps, in which order, and what is told.

In: the shop's conditions, the states that hold, the states that a step needs. Out: `Change`s in
their order, and the states that hold then.

A step is silent about what it doesn't need; a state stays until a step asks for another of its
group, excludes it, or the job ends. What changes:

1. If something to change has `changed_with`, and the key is in none of those power states, the key
   goes there first: to the one listed first that no needed state excludes. Of several that will
   do, it is the one in which the most can be changed, so that the key is turned once. A change
   inside a group obeys the `changed_with` of both its states.
2. What a needed state excludes goes back to normal, what was entered last comes first. The power
   state goes back after the others.
3. The needed states are entered in the order of the step; one that excludes a state which holds
   waits until that is gone.
4. The needed power state comes last. What can't be entered before it comes after it: a state that
   needs the power on, or that excludes the power state in which the rest is changed.

Before these rules goes what takes the power off (`counts_as: power off`):
5. A needed power state that takes the power off comes right after what can't be changed in it and
   what replaces a state that excludes it: an airbag is unplugged with the battery disconnected.
6. Where the power is off and a change sends the key elsewhere, what names the power off in
   `changed_with` is changed before: the airbag is plugged in before the battery is reconnected.
No line is told twice. The key never goes past a state that excludes it: that goes back to normal
first, and is entered again if the step needs it. So does a load before its connector is plugged in.
"""

from collections.abc import Callable, Iterable

from builder.graph.change import Change, change_of, told_once
from builder.graph.vehicle_states import (
    States,
    excludes,
    holds,
    in_the_way,
    normal_state,
    place_of,
    power_state,
)
from builder.model.conditions import POWER, Conditions, CountsAs, VehicleState

Changes = tuple[Change, ...]
Outcome = tuple[Changes, States]  # what changes, and what holds then
Chosen = Callable[[tuple[str, ...]], bool]  # of the power states in which something may change


def changes(conditions: Conditions, now: States, needed: Iterable[VehicleState]) -> Outcome:
    """Return what changes so that the needed states hold, and the states that hold then.

    The needed states are not `at_odds`. Raises KeyError where one is of no condition.
    """
    work = _Work(conditions, now, tuple(dict.fromkeys(needed)))
    return work.carried_out([one for one in work.others_holding() if work.is_unwanted(one)])


def back_to_normal(conditions: Conditions, now: States, kept: States = ()) -> Outcome:
    """Return what is put back at an end, a handoff or a break, and the states that hold then.

    What was entered last goes first, the power state last. What is `kept` holds before and after;
    it isn't `at_odds`.
    """
    power = power_state(conditions, kept)
    work = _Work(conditions, now, tuple(dict.fromkeys((*kept, power) if power else kept)))
    return work.carried_out([one for one in work.others_holding() if one not in kept])


class _Work:
    """The changes so far, and what holds after them."""

    def __init__(self, conditions: Conditions, now: States, wanted: States) -> None:
        self.conditions, self.now, self.wanted = conditions, now, wanted
        self.done: list[Change] = []
        self.late: list[VehicleState] = []  # entered after the power state
        self.leaving: list[VehicleState] = []  # on the way out just now

    def is_power(self, state: VehicleState) -> bool:
        return self.conditions[state.condition].group == POWER

    def holds(self, state: VehicleState) -> bool:
        """Whether a state holds now."""
        return holds(self.conditions, self.now, state)

    def others_holding(self) -> list[VehicleState]:
        """Return what holds beside the power state, entered last first."""
        return [one for one in reversed(self.now) if not self.is_power(one)]

    def to_enter(self) -> list[VehicleState]:
        """Return what is needed beside the power state, does not hold and is not late."""
        waiting = (one for one in self.wanted if not self.holds(one) and one not in self.late)
        return [one for one in waiting if not self.is_power(one)]

    def is_unwanted(self, state: VehicleState) -> bool:
        """Whether a needed state excludes it, of those that aren't late."""
        wanted = (one for one in self.wanted if one not in self.late)
        return any(excludes(self.conditions, state, one) for one in wanted)

    def carried_out(self, leave: list[VehicleState]) -> Outcome:
        """Leave and enter what has to be, with the key where it has to be for each."""
        enter = self.to_enter()
        self.late = [one for one in enter if self._blocks(one, leave, enter)]
        self._power_off_first(leave)
        leave = [one for one in leave if one in self.now]
        self._key_for(self._lists(leave))
        for state in leave:
            self._leave(state)
        self._leave_power()
        self._enter_in_turn(self.to_enter())
        self._key_as_wanted()
        self.late = []
        self._leave_power()
        for state in self._enter_in_turn(self.to_enter()):
            self._enter(state)
        self._key_as_wanted()
        return tuple(self.done), self.now

    def _power_off_first(self, leave: list[VehicleState]) -> None:
        """Take the power off before the changes, and make those it was taken off for in time."""
        now = power_state(self.conditions, self.now)
        wanted = next(filter(self.is_power, self.wanted), None)
        elsewhere = [one for one in self._lists(leave) if now and now.condition not in one]
        if wanted and wanted != now and self._is_power_off(wanted):
            self._change(leave, lambda listed: bool(listed) and wanted.condition not in listed)
            self._make_way(wanted)
            self._key_to(wanted)
        elif now and elsewhere and self._is_power_off(now):
            self._change(leave, lambda listed: now.condition in listed)

    def _make_way(self, power: VehicleState) -> None:
        """Enter what is needed in the place of a state that excludes the power state."""
        kinds = self.conditions
        held = {one: self._ends(one, entering=True)[0] for one in self.to_enter()}
        self._enter_in_turn(
            [one for one, old in held.items() if old and excludes(kinds, old, power)]
        )

    def _is_power_off(self, state: VehicleState) -> bool:
        return self.conditions[state.condition].counts_as is CountsAs.POWER_OFF

    def _change(self, leave: list[VehicleState], chosen: Chosen) -> None:
        """Leave and enter those that can be changed in chosen power states."""
        first = [one for one in leave if chosen(self._allowed(one, False))]
        then = [one for one in self.to_enter() if chosen(self._allowed(one, True))]
        self._key_for([self._allowed(one, one in then) for one in (*first, *then)])
        for state in first:
            self._leave(state)
        self._enter_in_turn(then)

    def _blocks(
        self, state: VehicleState, leave: list[VehicleState], enter: list[VehicleState]
    ) -> bool:
        """Whether a state excludes every power state in which some other change can be made."""
        others = (self._allowed(one, one not in leave) for one in (*leave, *enter) if one != state)
        keys = ([VehicleState(key) for key in listed] for listed in others if listed)
        return any(all(excludes(self.conditions, state, key) for key in one) for one in keys)

    def _allowed(self, state: VehicleState, entering: bool) -> tuple[str, ...]:
        """Return the power states in which a state can be entered or left; () for any."""
        before, after = self._ends(state, entering)
        ends = (self.conditions[one.condition] for one in (after, before) if one)
        first, *others = [one.changed_with for one in ends if one.changed_with] or [()]
        common = tuple(str(key) for key in first if all(key in listed for listed in others))
        return common or tuple(map(str, first))

    def _ends(
        self, state: VehicleState, entering: bool
    ) -> tuple[VehicleState | None, VehicleState | None]:
        """Return the state that is left, and the one that is entered instead."""
        normal = normal_state(self.conditions, state)
        if not entering:
            return state, normal
        place = place_of(self.conditions, state)
        held = (one for one in self.now if place_of(self.conditions, one) == place)
        return next(held, normal), state

    def _lists(self, leave: list[VehicleState]) -> list[tuple[str, ...]]:
        changing = [self._allowed(one, one not in leave) for one in (*leave, *self.to_enter())]
        return [listed for listed in changing if listed]

    def _key_for(self, changing: list[tuple[str, ...]]) -> None:
        """Bring the key to where all can be changed, if something can't be as it is."""
        power = power_state(self.conditions, self.now)
        for listed in changing:
            if power and power.condition not in listed:
                self._key_to(VehicleState(self._best(listed, changing)))
                return

    def _best(self, listed: tuple[str, ...], changing: list[tuple[str, ...]]) -> str:
        """Return the first listed that no needed state excludes; of several, what suits most."""
        free = [key for key in listed if not self.is_unwanted(VehicleState(key))]
        return max(free or listed, key=lambda key: sum(key in other for other in changing))

    def _key_to(self, power: VehicleState) -> None:
        for state in self.others_holding():
            if excludes(self.conditions, state, power):
                self.late.append(state)
                self._leave(state)
        self._put(power_state(self.conditions, self.now), power)

    def _leave_power(self) -> None:
        """Take the power state back to normal where a needed state excludes it, but not normal."""
        power = power_state(self.conditions, self.now)
        normal = power_state(self.conditions, ())
        if power and normal and self.is_unwanted(power) and not self.is_unwanted(normal):
            self._key_to(normal)

    def _key_as_wanted(self) -> None:
        for power in filter(self.is_power, self.wanted):
            if not self.holds(power):
                self._key_to(power)

    def _leave(self, state: VehicleState) -> None:
        """Leave a state, after those that can't hold once it is left."""
        if state not in self.now or state in self.leaving:
            return
        self.leaving.append(state)
        before, after = self._ends(state, entering=False)
        for one in in_the_way(self.conditions, self.now, after) if after else ():
            self._leave(one)
        self._key_for([listed] if (listed := self._allowed(state, False)) else [])
        self._put(before, after)
        self.leaving.remove(state)

    def _enter_in_turn(self, waiting: list[VehicleState]) -> list[VehicleState]:
        """Enter what can be entered, in its order; return what has something in its way."""
        while ready := next((one for one in waiting if self._is_free(one)), None):
            waiting.remove(ready)
            self._enter(ready)
        return waiting

    def _is_free(self, state: VehicleState) -> bool:
        return not in_the_way(self.conditions, self.now, state)

    def _enter(self, state: VehicleState) -> None:
        if self.holds(state):  # what was there instead is gone already
            return
        self._key_for([listed] if (listed := self._allowed(state, True)) else [])
        self._put(*self._ends(state, entering=True))

    def _put(self, before: VehicleState | None, after: VehicleState | None) -> None:
        """Make one change; what is entered stands where the state stood that it replaces."""
        self.done.append(told_once(change_of(self.conditions, before, after), self.done))
        stays = after is not None and not self.conditions[after.condition].normal
        if before in self.now:
            at = self.now.index(before)
            self.now = (*self.now[:at], *((after,) if after and stays else ()), *self.now[at + 1 :])
        elif after and stays:
            self.now = (*self.now, after)
