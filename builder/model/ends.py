"""The ends of a tree: a fix, which repairs, and a stop, which doesn't.

In: filled by the reader. Out: `Fix` and `Stop`, the bodies of steps that end a walk.
"""

from dataclasses import dataclass
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
    """A part to install, and its price."""

    part: Text
    price: Money | None = None


@dataclass(frozen=True, slots=True)
class Replaces:
    """The module that a fix replaces."""

    at: Position
    module: Text
    part: Text  # new | used


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


@dataclass(frozen=True, slots=True)
class Fix:
    """An end that repairs."""

    cause: Text
    weight: Number | None = None
    hours: Number | None = None
    parts: tuple[Part, ...] = ()
    replaces: Replaces | None = None
    verify: tuple[Text, ...] = ()
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
