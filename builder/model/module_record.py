"""The setup record of a control module.

In: filled by the reader from `kb/modules/`. Out: `Module`, which rules, options and pages ask.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.ends import Money
from builder.model.text import Number, Position, Text
from builder.model.tree import Need, Scope


class Needed(StrEnum):
    """Whether a module needs a step of its setup."""

    NEEDED = "needed"
    NOT_NEEDED = "not needed"
    UNKNOWN = "not known"


class UsedPart(StrEnum):
    """Whether a used module can be set up on another vehicle."""

    YES = "yes"
    NO = "no"
    IF_RELEASED = "if released"
    UNKNOWN = "not known"


class DriveBefore(StrEnum):
    """Whether the vehicle may be driven before the module is set up."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "not known"


class SafetySystem(StrEnum):
    """The safety system that a faulty module can disable."""

    NONE = "none"
    STEERING = "steering"
    BRAKES = "brakes"
    RESTRAINTS = "restraints"
    HIGH_VOLTAGE = "high-voltage"


@dataclass(frozen=True, slots=True)
class SetUpStep:
    """One step of the setup in a module's record: `program`, `configure` and so on."""

    verb: str
    at: Position
    needed: Needed
    minutes: Number | None = None
    needs: tuple[Text, ...] = ()
    hazards: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Fitting:
    """How a module is installed; every fix that replaces it inherits this."""

    do: tuple[Text, ...] = ()
    when: tuple[Text, ...] = ()  # conditions in free text
    needs: tuple[Need, ...] = ()  # states of the vehicle
    hazards: tuple[Text, ...] = ()
    torques: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Module:
    """The setup record of a control module."""

    id: str
    file: str
    at: Position
    name: Text
    used_part: UsedPart
    drive_before_set_up: DriveBefore
    safety: SafetySystem
    set_up: tuple[SetUpStep, ...]  # in their order
    also_called: tuple[Text, ...] = ()
    applies_to: tuple[Scope, ...] = ()
    refusals: Mapping[str, Text] = field(default_factory=dict)
    prove_first: tuple[Text, ...] = ()  # supply, ground, network: test before condemning it
    write_down: tuple[Text, ...] = ()
    released_by: Text | None = None
    drive_why: Text | None = None
    network: Text | None = None
    if_it_fails: Text | None = None
    price: Money | None = None
    hours: Mapping[str, Number] = field(default_factory=dict)  # fit, set_up, verify
    source: Mapping[str, Text] = field(default_factory=dict)
    fit: Fitting | None = None
