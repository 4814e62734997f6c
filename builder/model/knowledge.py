"""What trees refer to: articles, modules, hazards, tools, words, codes, closed jobs.

In: filled by the reader from `kb/`. Out: values in the `Library`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.text import Number, Position, Text
from builder.model.tree import Signed


class Signal(StrEnum):
    """Signal words of ANSI Z535.4, most severe first; NOTICE is for property only."""

    DANGER = "DANGER"
    WARNING = "WARNING"
    CAUTION = "CAUTION"
    NOTICE = "NOTICE"


@dataclass(frozen=True, slots=True)
class Hazard:
    """A caution in its three parts: the hazard, the harm, how to avoid it."""

    id: Text
    signal: Signal
    hazard: Text
    harm: Text
    avoid: Text
    one_line: Text | None = None

    @property
    def short(self) -> str:
        """Its words for a single line; by default its ID: battery gas."""
        return str(self.one_line or self.id.replace("-", " "))


@dataclass(frozen=True, slots=True)
class InstrumentRange:
    """The range of a tool in one unit."""

    unit: Text
    low: Number
    high: Number
    resolution: Number | None = None
    error: Text | None = None  # "0.5 % + 0.02": of the reading, plus the fixed part in the unit
    over: Text | None = None  # what it shows above its range


@dataclass(frozen=True, slots=True)
class Tool:
    """A tool of the shop, what it reads, and where the shop keeps it."""

    id: Text
    name: Text
    reads: tuple[InstrumentRange, ...] = ()
    kept: Text | None = None
    note: Text | None = None


@dataclass(frozen=True, slots=True)
class Lamp:
    """A warning light; trees name it by its `id`."""

    id: Text
    name: Text
    looks_like: Text | None = None
    color: Text | None = None


@dataclass(frozen=True, slots=True)
class System:
    """A system of the vehicle; its trees are in a folder named by its `id`."""

    id: Text
    name: Text


@dataclass(frozen=True, slots=True)
class CodeEntry:
    """A DTC in the shop's own words."""

    code: Text
    short: Text
    module: Text | None = None
    asks: Mapping[str, Text] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class FailureType:
    """A failure type byte in the shop's own words, and the setup step it points to."""

    byte: Text
    short: Text
    set_up: Text | None = None


@dataclass(frozen=True, slots=True)
class Term:
    """A glossary entry."""

    id: Text
    term: Text
    means: Text
    not_: tuple[Text, ...] = ()  # words it gets mixed up with
    also: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Word:
    """A slang word and its proper terms; with more than one, the search asks which."""

    slang: Text
    terms: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class HowTo:
    """A how-to article."""

    id: str
    file: str
    at: Position
    title: Text
    purpose: Text
    body: str  # Markdown below the front matter
    body_line: int  # the line on which the body begins
    tools: tuple[Text, ...] = ()
    hazards: tuple[Text, ...] = ()
    minutes: Number | None = None
    reviewed: Signed | None = None


class CaseOutcome(StrEnum):
    """How a closed job turned out."""

    FIXED = "fixed"
    CAME_BACK = "came back"
    UNKNOWN = "not known"


@dataclass(frozen=True, slots=True)
class CaseStep:
    """One step of a closed job."""

    step: Text
    result: Text | None = None
    reading: Text | None = None  # with its unit, as `readings`
    readings: Mapping[str, Text] = field(default_factory=dict)
    tool: Text | None = None
    inside: Text | None = None  # another tree than the job's, or `procedures/<name>`
    stated: bool = False  # known before, not measured

    @property
    def measured(self) -> Mapping[str, str]:
        """The readings by name; the one reading of a check has the name ""."""
        return {**({"": self.reading} if self.reading else {}), **self.readings}


@dataclass(frozen=True, slots=True)
class Case:
    """A closed job, without customer name, license plate or VIN."""

    id: str
    file: str
    at: Position
    tree: Text
    revision: Text | None
    vehicle: Mapping[str, Text]  # id, make, model, year, km
    opened: Text
    closed: Text
    path: tuple[CaseStep, ...]
    fix: Text | None
    worked: Number | None
    waited: Number | None
    outcome: CaseOutcome
    verified: Text | None = None
    also_found: tuple[Text, ...] = ()
    fix_in: Text | None = None  # the tree of the fix, if it isn't the job's
    walked: bool = False  # `path` is a whole walk, which the check plays again
    asked: Mapping[str, Text] = field(default_factory=dict)  # what fills placeholders and specs
    lists: Mapping[str, tuple[Text, ...]] = field(default_factory=dict)
