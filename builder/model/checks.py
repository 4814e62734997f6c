"""What a check asks, what it can find, and where each result leads.

In: filled by the reader. Out: `Check`, the body of a step, with its readings and results.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from builder.model.figures import FigureKind
from builder.model.ranges import Range
from builder.model.text import Number, Position, Text


@dataclass(frozen=True, slots=True)
class Branch:
    """Where a result or an action leads, or the word that a procedure returns."""

    text: Text  # as written: `belt`, `network/unit-silent#answers`, `next`, `back`
    step: str | None = None  # in this tree, or in the tree handed off to
    tree: str | None = None  # the tree handed off to
    returns: bool = False  # from a procedure, with `text` as the word

    @property
    def leaves(self) -> bool:
        """Whether it leaves the tree or the procedure."""
        return self.tree is not None or self.returns

    @property
    def next_item(self) -> bool:
        """Whether it continues with the next item of the step's list."""
        return self.text == "next" and not self.returns

    @property
    def back(self) -> bool:
        """Whether it goes back to the step that led here."""
        return self.text == "back" and not self.returns


@dataclass(frozen=True, slots=True)
class Result:
    """One result of a check and the branch it takes."""

    at: Position
    text: Text  # the phrase or range as written; of several readings "plus: ..., ground: ..."
    branch: Branch
    ranges: Mapping[str, Range] = field(default_factory=dict)  # reading name to range; {} = phrase
    # Reading name to `below spec`, `within spec`, `above spec` or `none` (nothing shown).
    compares: Mapping[str, Text] = field(default_factory=dict)
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
    spec: Text | None = None  # its name: unit and range come from there
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
    cannot_test: Branch | None = None
    by: Text | None = None  # the procedure that finds the result
    with_: Mapping[str, Text] = field(default_factory=dict)  # what the procedure takes
    told: bool = False  # the answer is told or looked up, not seen on the vehicle
