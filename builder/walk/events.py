"""What happens on a walk, one event after another, and how a file writes it.

In: maps as JSON has them: `{"event": "answer", "step": "horn/silent#fuse", "result": 1}`. Out: frozen
events, or a `Refused` with the reason. A job is its events: everything else follows from them.

Every event may carry `at` (time, ISO 8601 with its offset from UTC) and `who`. Where an event has
`step` it is `tree#step` (or `procedures/name#step`), or the step alone, or nothing: then it is
the step where the walk is. An event for another step is refused.

| event | fields | it |
|---|---|---|
| `start` | tree, vehicle, complaint, enter, proven | begins; `enter` is another step than the first, `proven` what was found before: step to result, stated and not measured |
| `fill` | name, value, source | answers what the walk asks for: a question of the tree (or a DTC that stands for the answer), a list, a spec |
| `answer` | step, result, readings, stated, wrote | gives the result of a check, counted from 0, the readings as typed, or both. `stated`: not measured here |
| `done` | step, wrote | an action, or the repair of a fix, is done; `wrote`: what was to be written down |
| `cannot_test` | step, seen | the check can't be done; `seen` is one line of what is in the way |
| `none_of_these` | step, seen | no result fits; `seen` is one line of what was seen |
| `tick` | step, line, on | one line to do is done, or not |
| `acknowledge` | step, hazards | cautions were read |
| `run` | step | goes into the procedure of a check; its `return` comes out by itself |
| `take` | step | takes what the same procedure proved earlier in the job |
| `verify` | step, passed | a test in words after the repair was good, or not |
| `write_up` | name, text, step | at an end, in the tech's own words for the papers: `where` (side, axle, cylinder), `cause`, `repair`, `parts`, `complaint` (what the cause doesn't explain of it), `next` (what becomes of that), `caused` (damage that the fault did), `codes` (DTCs before the repair, `none stored` or `not scanned`), `chosen` (an estimate option, by ID or in words), `declined`, `time` (why it took longer), `after` (the repair: complaint, DTCs), `handed` (who took over), or what was seen at the check of that name |
| `back` | | undoes the last event |
| `correct` | index, result, readings, stated | changes an earlier answer: `index` counts the steps of the record from 0 |
| `pause` | | a break |
| `hand_over` | to | to somebody else |
| `resume` | | after a break or a handover: cautions are shown in full again |
| `rejoin` | | after the fix of another tree: back to the step that handed off to it |
"""  # noqa: E501

from collections.abc import Mapping
from dataclasses import dataclass, field

Readings = Mapping[str, str]  # as typed, by the name of the reading; "" where there is only one
Value = str | tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """Begin a job."""

    tree: str
    vehicle: str = ""
    complaint: str = ""
    enter: str = ""
    proven: Mapping[str, str] = field(default_factory=dict)
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """Answer what the walk asks for."""

    name: str
    value: Value
    source: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """Give the result of a check."""

    step: str = ""
    result: int | None = None
    readings: Readings = field(default_factory=dict)
    stated: bool = False
    wrote: Readings = field(default_factory=dict)
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """Finish an action or a repair."""

    step: str = ""
    wrote: Readings = field(default_factory=dict)
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotTest:
    """A check can't be done."""

    step: str = ""
    seen: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NoneOfThese:
    """No result fits."""

    seen: str
    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A line to do is done, or not; lines are counted from 0 as the screen lists them."""

    line: int
    step: str = ""
    on: bool = True
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Acknowledge:
    """Cautions were read."""

    hazards: tuple[str, ...]
    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunProcedure:
    """Go into the procedure of a check."""

    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeEarlier:
    """Take what the same procedure proved earlier in the job."""

    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verified:
    """A test in words after the repair was good, or not."""

    passed: bool
    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class WriteUp:
    """Say in own words what the papers are to say; an empty text takes it back."""

    name: str  # as above, or a check
    text: str
    step: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Back:
    """Undo the last event."""

    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Correct:
    """Change an earlier answer."""

    index: int
    result: int | None = None
    readings: Readings = field(default_factory=dict)
    stated: bool = False
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pause:
    """Take a break."""

    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """Hand the job to somebody else."""

    to: str = ""
    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Resume:
    """Go on after a break or a handover."""

    at: str = ""
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rejoin:
    """Go back to the step that handed off to this tree."""

    at: str = ""
    who: str = ""


Event = (
    Start | Fill | Answer | Done | CannotTest | NoneOfThese | Tick | Acknowledge | RunProcedure
    | TakeEarlier | Verified | WriteUp | Back | Correct | Pause | HandOver | Resume | Rejoin
)  # fmt: skip

EVENT_NAMES: Mapping[str, type[Event]] = {
    "start": Start, "fill": Fill, "answer": Answer, "done": Done, "cannot_test": CannotTest,
    "none_of_these": NoneOfThese, "tick": Tick, "acknowledge": Acknowledge, "run": RunProcedure,
    "take": TakeEarlier, "verify": Verified, "write_up": WriteUp, "back": Back,
    "correct": Correct, "pause": Pause, "hand_over": HandOver, "resume": Resume, "rejoin": Rejoin,
}  # fmt: skip
