"""The states a vehicle can be in while somebody works on it: key off, raised, a part unplugged.

In: filled by the reader from `kb/conditions.yml`. Out: `Condition`s in the library, and the
`VehicleState`s that steps need and that hold along a path.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from builder.model.text import Number, Text
from builder.model.tree import Deed

POWER = "power"  # the group of the key, the engine and the battery


class Takes(StrEnum):
    """What a condition is about; each part has a state of its own."""

    PART = "part"  # {unplugged: alternator}
    CURRENT = "current"  # {loaded: 9 A}, at the part that the step names


class CountsAs(StrEnum):
    """What a condition means to the rules on limits."""

    LOAD = "load"  # a voltage drop can be measured
    POWER_OFF = "power off"  # resistance can be measured


class VehicleState(NamedTuple):
    """One condition that holds or is needed, and where."""

    condition: str  # its id
    part: str = ""  # the part that it is about; "" = the vehicle
    value: str = ""  # the current of a load, as written: `9 A`


@dataclass(frozen=True, slots=True)
class Condition:
    """One condition: how a vehicle gets into it and out of it, and what it goes with."""

    id: Text
    group: Text | None = None  # one condition of a group holds at a time; None = on or off
    normal: bool = False  # a vehicle comes in and leaves with it
    takes: Takes | None = None
    text: Text | None = None  # None: nothing is told
    enter: tuple[Text, ...] = ()  # lines to do, with `<part>` or `<current>`
    undo: tuple[Text, ...] = ()
    excludes: tuple[Text, ...] = ()  # works both ways
    changed_with: tuple[Text, ...] = ()  # power states in which it may change; () = any
    also_say: Text | None = None  # a group; a step with this condition names a state of it too
    minutes: Number | None = None  # of work
    wait: Number | None = None  # minutes that are not work
    hazards: tuple[Text, ...] = ()
    does: tuple[Deed, ...] = ()  # what entering it counts as
    undo_does: tuple[Deed, ...] = ()  # what leaving it counts as
    counts_as: CountsAs | None = None
    starts_engine: bool = False  # what steps took off is put back before it is entered
    broken: bool = False  # a mistake of text: something of it is missing here


Conditions = Mapping[str, Condition]  # by id, in the order of the file
