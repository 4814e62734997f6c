"""One change at the vehicle: what is told, and what it costs and does.

In: the shop's conditions, the state that is left and the one that comes. Out: a `Change`. Its lines
keep the ID of the part; the names that people use are filled in where the lines are shown.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import NamedTuple

from builder.model.conditions import Condition, Conditions, VehicleState
from builder.model.text import Text
from builder.model.tree import Deed

NO_NAMES: Mapping[str, str] = {}


class ToldLine(NamedTuple):
    """A line that is told, with what stands for `<part>` and `<current>` in it."""

    line: str
    part: str = ""
    current: str = ""

    def words(self, names: Mapping[str, str] = NO_NAMES) -> str:
        """Write it, with the name of the part instead of its ID where there is one."""
        part = names.get(self.part, self.part)
        return self.line.replace("<part>", part).replace("<current>", self.current)


@dataclass(frozen=True, slots=True)
class Change:
    """One state that is left for another, with all that comes with it.

    Told is the `undo` of what is left, then the `enter` of what comes; of a normal state only if no
    `undo` is told. Hazards are those of what comes, and of what is left if its `undo` is told.
    Going back to normal takes the minutes of the normal state, or if it has none, those of the
    state left; any other change those of what comes, and of what is left if its `undo` is told.
    Where nothing is told, nothing takes time.
    """

    left: VehicleState | None  # None: it was off
    entered: VehicleState | None  # None: it is off now
    told: tuple[ToldLine, ...]
    minutes: Decimal  # of work
    wait: Decimal  # minutes that are not work
    hazards: tuple[Text, ...]
    does: tuple[Deed, ...]


def change_of(
    conditions: Conditions, left: VehicleState | None, entered: VehicleState | None
) -> Change:
    """Return what it takes to leave a state for another of its place; None stands for off."""
    before = conditions[left.condition] if left else None
    after = conditions[entered.condition] if entered else None
    undo = _filled(before.undo, left) if before else ()
    enter = _filled(after.enter, entered) if after and not (after.normal and undo) else ()
    undone = before if undo else None
    return Change(
        left=left,
        entered=entered,
        told=(*undo, *enter),
        minutes=_minutes(before, after, undone) if undo or enter else Decimal(0),
        wait=(after.wait if after else None) or Decimal(0),
        hazards=tuple(dict.fromkeys((*_hazards(undone), *_hazards(after)))),
        does=(*(before.undo_does if before else ()), *(after.does if after else ())),
    )


def told_once(change: Change, before: Iterable[Change]) -> Change:
    """Leave out what a change before it has told on entering the state that is left now.

    So "Turn the key off" isn't told twice on the way to a disconnected battery.
    """
    entering = (one.told for one in before if one.entered and one.entered == change.left)
    told = {line.words() for lines in entering for line in lines}
    return replace(change, told=tuple(line for line in change.told if line.words() not in told))


def _filled(lines: tuple[Text, ...], state: VehicleState | None) -> tuple[ToldLine, ...]:
    part, value = (state.part, state.value) if state else ("", "")
    return tuple(ToldLine(str(line), part, value) for line in lines)


def _minutes(
    before: Condition | None, after: Condition | None, undone: Condition | None
) -> Decimal:
    own = after.minutes if after else None
    if after is None or after.normal:
        return own if own is not None else _own_minutes(before)
    return _own_minutes(after) + _own_minutes(undone)


def _own_minutes(condition: Condition | None) -> Decimal:
    return (condition.minutes if condition else None) or Decimal(0)


def _hazards(condition: Condition | None) -> tuple[Text, ...]:
    return condition.hazards if condition else ()
