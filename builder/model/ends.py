"""The ends of a tree or a procedure: a fix, which repairs, a stop, which doesn't, and a return.

In: filled by the reader. Out: `Fix`, `Stop` and `Return`, the bodies of steps that end a walk.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum

from builder.model.checks import Branch
from builder.model.text import Number, Position, Text


@dataclass(frozen=True, slots=True)
class Money:
    """An amount in the shop's currency, or a range of amounts."""

    low: Decimal
    high: Decimal


@dataclass(frozen=True, slots=True)
class Part:
    """A part to install, and its price; `only_if` says when it's needed if not always.

    `is_service`: work that is bought, such as a cleaning; no part, so not taxed as one.
    """

    part: Text
    price: Money | None = None
    only_if: Text | None = None
    is_service: bool = False


@dataclass(frozen=True, slots=True)
class Replaces:
    """The module that a fix replaces."""

    at: Position
    module: Text
    part: Text  # new | used


class Drive(StrEnum):
    """Whether the vehicle may be driven as it is, before the repair; the mildest first."""

    YES = "yes"
    WITH_CARE = "with care"
    NO = "no"


@dataclass(frozen=True, slots=True)
class Verification:
    """One thing that proves a repair: a check of the tree, a procedure, or free text."""

    text: Text  # the name of a check or a procedure, which has no blank; or free text
    passes: tuple[Text, ...] = ()  # the results that pass, or the one thing the procedure takes
    readings: Mapping[str, Text] = field(default_factory=dict)  # what passes, of several readings

    @property
    def is_named(self) -> bool:
        """Whether it names a check or a procedure."""
        return " " not in self.text


@dataclass(frozen=True, slots=True)
class Proof:
    """A check that a fix rests on, and the results of it that will do."""

    step: Text
    results: tuple[Text, ...]


class PartKind(StrEnum):
    """What kind of part an option installs."""

    NEW = "new"
    USED = "used"
    REBUILT = "rebuilt"


@dataclass(frozen=True, slots=True)
class FixOption:
    """An estimate option of a fix; it replaces the standard option with the same ID."""

    id: str
    at: Position
    option: Text
    hours: Number | None = None
    price: Money | None = None
    parts: tuple[Part, ...] = ()
    tow: bool = False
    note: Text | None = None
    not_offered: Text | None = None
    chance: Number | None = None  # of a comeback with the same fault, 0 to 1
    part: PartKind | None = None
    only_if: Text | None = None  # what shows only once the work has begun


@dataclass(frozen=True, slots=True)
class Fix:
    """An end that repairs."""

    cause: Text
    weight: Number | None = None
    hours: Number | None = None
    parts: tuple[Part, ...] = ()
    replaces: Replaces | None = None
    verify: tuple[Verification, ...] = ()
    proved_by: tuple[Proof, ...] = ()
    torques: tuple[Text, ...] = ()  # names in the vehicle's file
    drive: Drive | None = None  # None: as the tree says
    why: Text | None = None
    still_there: Branch | None = None
    tell: Text | None = None
    options: tuple[FixOption, ...] = ()


class StopKind(StrEnum):
    """Why a walk ends without a repair."""

    FOREMAN = "foreman"
    NOT_FOUND = "not-found"
    NOT_THIS_TREE = "not-this-tree"
    CUSTOMER = "customer"
    UNSAFE = "unsafe"


@dataclass(frozen=True, slots=True)
class Stop:
    """An end without a repair."""

    kind: StopKind
    weight: Number | None = None
    drive: Drive | None = None  # None: as the tree says
    why: Text | None = None


@dataclass(frozen=True, slots=True)
class Return:
    """An end of a procedure; the words of its step are the word that it returns."""


Ending = Fix | Stop | Return  # the bodies of steps that end a walk
