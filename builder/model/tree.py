"""A decision tree in the words of the format.

In: filled by the reader from `trees/<system>/<slug>.yml`. Out: used by every other room. A step's
`body` says what kind it is: `Check`, `Action`, `Fix` or `Stop`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum

from builder.model.figures import FigureKind
from builder.model.ranges import Range
from builder.model.silence import Silence
from builder.model.text import Number, Position, Text


@dataclass(frozen=True, slots=True)
class Branch:
    """Where a result or an action leads."""

    text: Text  # as written: `belt`, `network/unit-silent#answers`, `next`, `back`
    step: str | None = None  # in this tree, or in the tree handed off to
    tree: str | None = None  # the tree handed off to

    @property
    def next_item(self) -> bool:
        """Whether it continues with the next item of the step's list."""
        return self.text == "next"

    @property
    def back(self) -> bool:
        """Whether it goes back to the step that led here."""
        return self.text == "back"


@dataclass(frozen=True, slots=True)
class Result:
    """One result of a check and the branch it takes."""

    at: Position
    text: Text  # the phrase or range as written; of several readings "plus: ..., ground: ..."
    branch: Branch
    ranges: Mapping[str, Range] = field(default_factory=dict)  # reading name to range; {} = phrase
    otherwise: bool = False  # everything the results above don't cover; only with several readings
    means: Text | None = None
    done: bool = False
    with_: Mapping[str, Text] = field(default_factory=dict)
    weight: Number | None = None
    chance: Number | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """A value to measure: its unit and its range."""

    at: Position
    name: str  # "" for the one reading of a check
    unit: Text
    low: Decimal
    high: Decimal  # infinity where `to: OL`: the meter can show over-limit
    resolution: Number | None = None
    origin: Text | None = None
    one_of: tuple[Text, ...] = ()  # phrases instead of a number: then low and high count them

    @property
    def to_over(self) -> bool:
        """Whether OL is a possible reading."""
        return self.high.is_infinite()


@dataclass(frozen=True, slots=True)
class Computed:
    """A reading calculated from others."""

    name: Text
    expression: Text


@dataclass(frozen=True, slots=True)
class Figure:
    """A spec of the vehicle maker, looked up at the vehicle."""

    at: Position
    look_up: Text
    unit: Text
    kind: FigureKind
    origin: Text | None = None


@dataclass(frozen=True, slots=True)
class Check:
    """A check: its results are phrases, ranges of readings, or comparisons with a spec."""

    results: tuple[Result, ...]
    readings: tuple[Reading, ...] = ()
    computed: tuple[Computed, ...] = ()
    figure: Figure | None = None
    several: bool = False  # more than one result can match: the first one counts
    could_not: Branch | None = None


@dataclass(frozen=True, slots=True)
class Action:
    """Something to do, and the next step."""

    then: Branch | None  # None is a dead end, which is a finding


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


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture of a step."""

    file: Text
    shows: Text


@dataclass(frozen=True, slots=True)
class Deed:
    """What a step does, from the closed list: `program eps-module`, `clear-codes`."""

    text: Text
    verb: str
    module: str | None = None


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a tree."""

    id: Text
    at: Position  # of the whole step
    text: Text  # the words after `check:`, `action:`, `fix:` or `stop:`
    body: Check | Action | Fix | Stop
    note: Text | None = None
    when: tuple[Text, ...] = ()
    tools: tuple[Text, ...] = ()
    how_to: Text | None = None
    picture: Picture | None = None
    minutes: Number | None = None  # labor
    wait: Number | None = None  # minutes of waiting
    people: Number | None = None
    hazards: tuple[Text, ...] = ()
    does: tuple[Deed, ...] = ()
    write_down: tuple[Text, ...] = ()
    put_back: Text | None = None
    at_most: Number | None = None
    spent: Branch | None = None
    same_as: Text | None = None
    after: tuple[Text, ...] = ()
    each: tuple[Text, Text] | None = None  # the item's name and the name of its list

    @property
    def kind(self) -> str:
        """The key of the format: check, action, fix or stop."""
        return type(self.body).__name__.lower()


@dataclass(frozen=True, slots=True)
class Scope:
    """The vehicles that a tree or a module's record covers."""

    at: Position
    make: Text
    model: Text
    years: tuple[int, int] | None = None  # first and last model year


@dataclass(frozen=True, slots=True)
class Symptom:
    """How the fault shows itself, in the words of customers and apprentices."""

    words: tuple[Text, ...]
    lamps: tuple[Text, ...] = ()
    codes: tuple[Text, ...] = ()
    fitted_elsewhere: tuple[Text, ...] = ()
    during: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Signed:
    """Who wrote or reviewed, and when (ISO date as written)."""

    by: Text
    date: Text


@dataclass(frozen=True, slots=True)
class Question:
    """A question asked once for the whole tree, and the DTCs that answer it."""

    name: Text
    ask: Text
    one_of: tuple[Text, ...] = ()
    codes: Mapping[str, Text] = field(default_factory=dict)


class Status(StrEnum):
    """How far a tree can be trusted."""

    DRAFT = "draft"
    READY = "ready"
    RETIRED = "retired"  # only its address still works


@dataclass(frozen=True, slots=True)
class Tree:
    """A decision tree; `steps` keeps the order of the file and its first step is the start."""

    id: str
    file: str
    at: Position
    title: Text
    status: Status
    system: Text
    symptom: Symptom
    steps: Mapping[str, Step]
    revision: str  # short hash of the file's content
    applies_to: tuple[Scope, ...] = ()  # () = any vehicle
    written: Signed | None = None
    reviewed: Signed | None = None
    replaced_by: Text | None = None
    asks: tuple[Question, ...] = ()
    lists: Mapping[str, tuple[Text, ...]] = field(default_factory=dict)
    silences: tuple[Silence, ...] = ()
    broken: frozenset[str] = frozenset()  # steps with a mistake in their text; rules skip them
    defined_twice: frozenset[str] = frozenset()  # steps with a second definition, which is ignored

    @property
    def start(self) -> Step:
        """The first step."""
        return next(iter(self.steps.values()))
