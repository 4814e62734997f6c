"""A decision tree in the words of the format.

In: filled by the reader from `trees/<system>/<slug>.yml`. Out: used by every other room. A step's
`body` says what kind it is: `Check`, `Action`, `Fix`, `Stop` or, in a procedure, `Return`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from builder.model.checks import Branch, Check
from builder.model.ends import Drive, Fix, Return, Stop
from builder.model.silence import Silence
from builder.model.text import Number, Position, Text


@dataclass(frozen=True, slots=True)
class Action:
    """Something to do, and the next step."""

    then: Branch | None  # None is a dead end, which is a finding


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
    module: str | None = None  # or, of a proof, another part: `check-ground alternator`

    @property
    def is_setup(self) -> bool:
        """Whether it sets up a module: everything that names one but is no proof."""
        return self.module is not None and not self.verb.startswith("check-")


@dataclass(frozen=True, slots=True)
class Outcome:
    """What comes with a word that a procedure returns."""

    does: tuple[Deed, ...] = ()  # done on every path to it; and what may have been undone
    chance: Fraction = Fraction(0)  # by the results of the procedure itself
    minutes: Fraction = Fraction(0)  # expected, of work
    wait: Fraction = Fraction(0)  # expected, apart from the work
    shortest: Fraction = Fraction(0)
    longest: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class ProcedureRun:
    """What it does and takes to run a procedure, with `<name>` filled in where that is known."""

    outcomes: Mapping[str, Outcome]  # by the word that it returns, every one
    may_do: tuple[Deed, ...] = ()  # on some path, each once
    # By requirement: what it may do before it has itself met what that needs.
    unmet: Mapping[str, tuple[Deed, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Changeover:
    """What it takes to bring the vehicle into what a step needs, on the usual way to it.

    At an end, what it takes to bring it back to normal.
    """

    minutes: Fraction  # of work
    wait: Fraction  # minutes that are not work


@dataclass(frozen=True, slots=True)
class Need:
    """A state of the vehicle that a step needs, as written: `key-on`, `{unplugged: alternator}`."""

    condition: Text  # its id
    value: Text | None = None  # the part, or the current of a load; may be a placeholder


@dataclass(frozen=True, slots=True)
class Where:
    """Where at the vehicle a step works: a phrase, or a part, a connector or a fuse."""

    at: Position
    phrase: Text | None = None
    part: Text | None = None
    connector: Text | None = None  # in trees for one vehicle
    pins: tuple[Text, ...] = ()  # roles of a part's pins, numbers of a connector's
    fuse: Text | None = None  # the part that the fuse feeds


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a tree."""

    id: Text
    at: Position  # of the whole step
    text: Text  # the words after `check:`, `action:`, `fix:`, `stop:` or `return:`
    body: Check | Action | Fix | Stop | Return
    note: Text | None = None
    do: tuple[Text, ...] = ()  # what is done before the answer, a line each
    where: Where | None = None
    when: tuple[Text, ...] = ()  # conditions in free text
    needs: tuple[Need, ...] = ()  # states of the vehicle
    hook_up: Text | None = None  # the state in which the `do` lines are done
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
    run: ProcedureRun | None = None  # of the procedure that finds the result, where the shop has it
    changeover: Changeover | None = None  # where the shop has states of the vehicle

    @property
    def kind(self) -> str:
        """The key of the format: check, action, fix, stop or return."""
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


class ValueKind(StrEnum):
    """What kind of value a placeholder stands for."""

    PART = "part"
    CURRENT = "current"  # of a load, such as `9 A`
    SPEC = "spec"
    MODULE = "module"
    TEXT = "text"


@dataclass(frozen=True, slots=True)
class Question:
    """A question asked once for the whole tree, or a value that a procedure takes."""

    name: Text
    ask: Text
    one_of: tuple[Text, ...] = ()
    codes: Mapping[str, Text] = field(default_factory=dict)
    kind: ValueKind = ValueKind.TEXT
    default: Text | None = None


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
    drive: Drive | None = None  # for every end that has none of its own
    why: Text | None = None
    asks: tuple[Question, ...] = ()
    lists: Mapping[str, tuple[Text, ...]] = field(default_factory=dict)
    silences: tuple[Silence, ...] = ()
    broken: frozenset[str] = frozenset()  # steps with a mistake in their text; rules skip them
    defined_twice: frozenset[str] = frozenset()  # steps with a second definition, which is ignored

    @property
    def is_procedure(self) -> bool:
        """Whether it is the body of a procedure, which other trees run."""
        return self.file.startswith("kb/")

    @property
    def start(self) -> Step:
        """The first step."""
        return next(iter(self.steps.values()))
