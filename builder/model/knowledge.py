"""What the trees lean on: articles, modules, hazards, tools, words, codes, closed cases.

In: filled by the reader from `kb/`. Out: held in the `Library` that rules, pages and plans ask.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from builder.model.text import Number, Position, Text
from builder.model.tree import Scope, Signed


class Signal(StrEnum):
    """Signal words of the open standards (ANSI Z535.4), most severe first."""

    # NOTICE is for property alone.

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

    @property
    def short(self) -> str:
        """Its id in words, for where there is one line: battery gas."""
        return self.id.replace("-", " ")


@dataclass(frozen=True, slots=True)
class InstrumentRange:
    """What a tool can read in one unit."""

    unit: Text
    low: Number
    high: Number
    resolution: Number | None = None
    error: Text | None = None  # "0.5 % + 0.02": of the reading, plus the fixed part in the unit
    over: Text | None = None  # what it shows above its range


@dataclass(frozen=True, slots=True)
class Tool:
    """A tool of the shop, what it reads and where it is kept."""

    id: Text
    name: Text
    reads: tuple[InstrumentRange, ...] = ()
    kept: Text | None = None
    note: Text | None = None


@dataclass(frozen=True, slots=True)
class Lamp:
    """A warning lamp; `id` is the name that trees use."""

    id: Text
    name: Text
    looks_like: Text | None = None
    colour: Text | None = None


@dataclass(frozen=True, slots=True)
class System:
    """A system of the vehicle; trees lie in a folder of its id."""

    id: Text
    name: Text


@dataclass(frozen=True, slots=True)
class Vehicle:
    """A vehicle that the shop sees."""

    id: Text
    scope: Scope
    lists: Mapping[str, tuple[Text, ...]] = field(default_factory=dict)
    note: Text | None = None


@dataclass(frozen=True, slots=True)
class CodeEntry:
    """A trouble code in the shop's own words."""

    code: Text
    short: Text
    module: Text | None = None
    asks: Mapping[str, Text] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class FailureType:
    """A failure type byte in the shop's own words, and the set-up step it points at."""

    byte: Text
    short: Text
    set_up: Text | None = None


@dataclass(frozen=True, slots=True)
class Term:
    """A glossary entry."""

    id: Text
    term: Text
    means: Text
    not_: tuple[Text, ...] = ()  # words it is mixed up with
    also: tuple[Text, ...] = ()


@dataclass(frozen=True, slots=True)
class Word:
    """A slang word and the proper terms; more than one term means: ask which."""

    slang: Text
    terms: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class HowTo:
    """An article: how a measurement is made."""

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
    said: Text | None = None  # a result or a reading as written
    readings: Mapping[str, Text] = field(default_factory=dict)
    tool: Text | None = None


@dataclass(frozen=True, slots=True)
class Case:
    """A closed job, without name, plate or vehicle number."""

    id: str
    file: str
    at: Position
    tree: Text
    revision: Text | None
    vehicle: Mapping[str, Text]
    opened: Text
    closed: Text
    path: tuple[CaseStep, ...]
    fix: Text | None
    worked: Number | None
    waited: Number | None
    outcome: CaseOutcome
    verified: Text | None = None
    also_found: tuple[Text, ...] = ()
