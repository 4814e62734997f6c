"""Where a walk is, as one frozen value; the reducer makes the next one of it.

In: the events. Out: `JobState`. Screens and the record are computed from it.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from builder.graph.vehicle_states import States
from builder.walk.events import Event, Value

CANNOT_TEST = "cannot test"  # the result of a check that couldn't be done
NONE_OF_THESE = "none of these"  # the result of a check whose results don't fit
STUCK = "stuck"  # the end where the person to call is shown


@dataclass(frozen=True, slots=True)
class Refused:
    """An event that doesn't fit the walk, and why; nothing changes."""

    message: str


@dataclass(frozen=True, slots=True)
class WalkFrame:
    """A tree, or on top of it a procedure that runs, or a check done to verify a repair.

    `counts` are the times that each step was come to; `failed` the fixes whose verification
    failed once.
    """

    inside: str  # ID of the tree, or `procedures/<name>`
    step: str
    came_from: Mapping[str, str] = field(default_factory=dict)  # to each step, the one before
    counts: Mapping[str, int] = field(default_factory=dict)
    items: Mapping[str, int] = field(default_factory=dict)  # of each list, by its step, from 0
    filled: Mapping[str, str] = field(default_factory=dict)  # placeholders: asks, arguments
    failed: frozenset[str] = frozenset()
    verifies: bool = False  # leaves with its result, to the fix below it
    aside: bool = False  # done before a check that verifies; its result doesn't count
    waits: str = ""  # the step that it comes to once it is on top

    @property
    def place(self) -> str:
        """The step as events name it: `charging/lamp-on#belt`."""
        return f"{self.inside}#{self.step}"


@dataclass(frozen=True, slots=True)
class RecordedReading:
    """A reading in the step's unit, and as it was typed."""

    value: str  # an exact decimal, OL, or "nothing shown"; a phrase as it is
    unit: str
    typed: str


@dataclass(frozen=True, slots=True)
class RecordedStep:
    """A step that was answered or done."""

    inside: str
    step: str
    kind: str
    result: str = ""  # its words; of an action `done`; or `cannot test`, `none of these`
    means: str = ""
    item: str = ""
    readings: Mapping[str, RecordedReading] = field(default_factory=dict)
    too_close: bool = False  # a limit is nearer than the instrument can tell
    stated: bool = False  # not measured on this walk
    seen: str = ""  # one line; of a test after the repair, what was tested
    earlier: str = ""  # the step that had proved it, where it wasn't run again
    wrote: Mapping[str, str] = field(default_factory=dict)
    at: str = ""
    who: str = ""
    minutes: int | None = None  # by the clock, without breaks
    event: int = -1  # the place in `done` of the event that made it; -1 for none


@dataclass(frozen=True, slots=True)
class Acknowledged:
    """A caution that was read: which, where, who, when."""

    hazard: str
    place: str
    who: str
    at: str


@dataclass(frozen=True, slots=True)
class WalkEnd:
    """Where the walk ended; `kind` is fix, or stuck, or the kind of the stop."""

    inside: str
    step: str
    kind: str
    verified: bool | None = None  # of a fix: None before its verification is over


@dataclass(frozen=True, slots=True)
class VehicleAsIs:
    """What holds where an answer was corrected and later steps don't follow any more.

    It stands among the events that hold, but is none: the vehicle stays as those steps left it.
    """

    now: States
    known: frozenset[str]
    put_back: tuple[str, ...]
    since: str


@dataclass(frozen=True, slots=True)
class JobState:
    """A walk so far.

    `now` are the states of the vehicle as they are. What a step needs is told on arrival and
    holds once the step is answered, or one of the lines to change it is ticked. Once a repair is
    done all is normal; so it is before each test after it.
    """

    tree: str = ""  # where the job began; "" before the start
    revision: str = ""
    vehicle: str = ""
    complaint: str = ""
    frames: tuple[WalkFrame, ...] = ()  # the last is where the walk is, the first the tree
    left: tuple[WalkFrame, ...] = ()  # trees that handed off, to rejoin; the last one first
    filled: Mapping[str, Value] = field(default_factory=dict)  # lists and specs, for the job
    sources: Mapping[str, str] = field(default_factory=dict)  # of the specs
    now: States = ()
    to_normal: bool = False  # everything goes back to normal before the step
    known: frozenset[str] = frozenset()  # hazards shown in full since the last break or handoff
    read: frozenset[str] = frozenset()  # acknowledged at this step
    ticked: frozenset[int] = frozenset()  # lines done at this step
    verifying: int | None = None  # the test after the repair that comes next
    put_back: tuple[str, ...] = ()  # in words, what no state covers; empty once it is put back
    proved: Mapping[str, tuple[str, str]] = field(default_factory=dict)  # procedure: word, place
    passed: tuple[str, ...] = ()  # steps spent, and so passed, on the way to this one
    paused: str = ""  # "", pause, hand_over
    end: WalkEnd | None = None
    steps: tuple[RecordedStep, ...] = ()
    struck: tuple[RecordedStep, ...] = ()  # what no longer follows, or was undone; kept
    acknowledged: tuple[Acknowledged, ...] = ()
    write_up: Mapping[str, Mapping[str, str]] = field(default_factory=dict)  # by fix, in own words
    since: str = ""  # the time that the walk came to the step, or was resumed
    worked: int = 0  # seconds at the step before that
    done: tuple[Event | VehicleAsIs, ...] = ()  # the events that hold
    events: tuple[Event, ...] = ()  # all, with those that were undone
    before: "JobState | None" = None  # without the last event


def stuck(state: JobState) -> JobState:
    """End at the person to call."""
    frame = state.frames[-1]
    return replace(state, end=WalkEnd(frame.inside, frame.step, STUCK), verifying=None)


def steps_before_repair(state: JobState) -> tuple[RecordedStep, ...]:
    """Return the steps before the repair in which a walk ended; all where it isn't done yet."""
    end = state.end
    if end is None or (state.verifying is None and end.verified is None):
        return state.steps
    places = [(one.inside, one.step, one.kind) for one in state.steps]
    done = [at for at, place in enumerate(places) if place == (end.inside, end.step, "fix")]
    return state.steps[: done[-1]] if done else state.steps


def is_repairing(state: JobState) -> bool:
    """Whether the walk is at a fix that isn't done yet."""
    is_fix = state.end is not None and state.end.kind == "fix"
    return is_fix and not is_over(state) and state.verifying is None


def judges_in_words(state: JobState) -> bool:
    """Whether the walk is at a test in words after a repair, and not in a check that verifies."""
    return state.verifying is not None and not any(frame.verifies for frame in state.frames)


def is_over(state: JobState) -> bool:
    """Whether the walk has ended, and a repair, if it ended with one, is tested."""
    return state.end is not None and (state.end.kind != "fix" or state.end.verified is not None)
