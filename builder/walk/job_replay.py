"""A closed job played again through one tree as it is now.

In: a `Case` that holds a walk, the tables with that tree. Out: for each stretch of the job in that
tree where it ends now, if that is elsewhere or the walk can't go on. A stretch runs to a fix that
was done or to the next tree. What was measured is typed in again, so a moved limit is noticed;
answers in words are found by their words. A check that the job never answered stops it.
"""

from collections import deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from builder.model.knowledge import Case, CaseStep
from builder.walk.events import (
    Acknowledge,
    Answer,
    CannotTest,
    Done,
    Event,
    Fill,
    NoneOfThese,
    RunProcedure,
    Start,
)
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, STUCK, JobState, Refused
from builder.walk.job_stretches import Stretch, is_inner, stretches_of
from builder.walk.reduce import reduce_event
from builder.walk.screen import screen
from builder.walk.told import row_of
from builder.walk.tree_rows import TreeTable
from builder.walk.walk_tables import PROCEDURES, WalkTables

LONGEST = 500  # events


@dataclass(frozen=True, slots=True)
class Deviation:
    """Where a stretch of a job goes another way now; `problem` says why it can't go on."""

    step: str  # the last step at which it goes as it did; "" before the first
    was: str  # where it ended: a fix, or another tree
    now: str  # "" where it can't go on
    problem: str = ""
    measured: CaseStep | None = None  # the first of its readings that give another result now
    gives: str = ""  # that result


class OneTree(Mapping[str, TreeTable]):
    """The tables of one tree; every other is empty, so that a walk ends where it hands off."""

    def __init__(self, table: TreeTable) -> None:
        """Take the table."""
        self.table = table

    def __getitem__(self, id_: str) -> TreeTable:
        """Return the table, or an empty one."""
        if id_ == self.table["id"]:
            return self.table
        return {"id": id_, "title": id_, "revision": "", "start": "", "steps": {}}

    def __iter__(self) -> Iterator[str]:
        """Iterate over the one ID."""
        return iter((self.table["id"],))

    def __len__(self) -> int:
        """Return 1."""
        return 1

    def __contains__(self, id_: object) -> bool:
        """Any tree can be handed off to."""
        return isinstance(id_, str)


def deviations(tables: WalkTables, tree: str, case: Case) -> Iterator[Deviation]:
    """Yield where a job leaves the way that it went through a tree."""
    for stretch in stretches_of(case):
        if stretch.tree == tree:
            deviation = _deviation(tables, stretch, case)
            if deviation:
                yield deviation


def _deviation(tables: WalkTables, stretch: Stretch, case: Case) -> Deviation | None:
    enter = "" if stretch.is_first else stretch.own[0]
    if enter and enter not in tables[stretch.tree]["steps"]:
        return Deviation("", stretch.end, "", f"there is no step `{enter}` any more")
    vehicle = str(case.vehicle.get("id", ""))
    start = Start(tree=stretch.tree, vehicle=vehicle if vehicle in tables.shop["vehicles"] else "",
                  enter=enter)  # fmt: skip
    state, problem = _played(tables, start, _Answers(stretch.steps, stretch.tree), case)
    now = _end_of(state, stretch)
    if not problem and _is_same_end(state, now, stretch):
        return None
    measured, gives = _other_result(state, stretch)
    return Deviation(_last_common(state, stretch), stretch.end, "" if problem else now, problem,
                     measured, gives)  # fmt: skip


def _other_result(state: JobState, stretch: Stretch) -> tuple[CaseStep | None, str]:
    """Return the first step whose readings give another result than the job has, and that one."""
    for before, now in zip(stretch.steps, state.steps, strict=False):
        if before.step != now.step or before.result != now.result:
            is_measured = before.step == now.step and before.measured and not before.stated
            return (before, now.result) if is_measured else (None, "")
    return None, ""


def _end_of(state: JobState, stretch: Stretch) -> str:
    end = state.end
    if end is None:
        return ""
    if end.inside != stretch.tree:
        return end.inside
    return STUCK if end.kind == STUCK else end.step


def _is_same_end(state: JobState, now: str, stretch: Stretch) -> bool:
    """Whether it ends where it did; a handoff that names a step leads to the step it led to."""
    if now != stretch.end:
        return False
    step = state.end.step if state.end else ""
    return not (stretch.end_step and step) or step == stretch.end_step


def _last_common(state: JobState, stretch: Stretch) -> str:
    played = [one.step for one in state.steps if not one.inside.startswith(PROCEDURES)]
    if state.end is None and state.frames:
        played.append(state.frames[0].step)  # the step that asks what the job can't answer
    common = ""
    for before, now in zip(stretch.own, played, strict=False):
        if before != now:
            break
        common = now
    return common


class _Answers:
    """What a job answered, by the place of the step, in the order of its visits."""

    def __init__(self, steps: Sequence[CaseStep], tree: str) -> None:
        """Take the steps of a stretch."""
        self.by_place: dict[str, deque[CaseStep]] = {}
        self.last: CaseStep | None = None
        for one in steps:
            inside = one.inside if is_inner(one) else tree
            self.by_place.setdefault(f"{inside}#{one.step}", deque()).append(one)

    def take(self, place: str) -> CaseStep | None:
        """Return the answer at this visit; once they are used up, the last one again."""
        answers = self.by_place.get(place)
        if not answers:
            return None
        self.last = answers.popleft() if len(answers) > 1 else answers[0]
        return self.last

    def ran(self, procedure: str) -> bool:
        """Whether the job ran a procedure."""
        return any(place.startswith(f"{PROCEDURES}{procedure}#") for place in self.by_place)


def _played(
    tables: WalkTables, start: Start, answers: _Answers, case: Case
) -> tuple[JobState, str]:
    """Return where the walk comes to, and why it can't go on, if so."""
    state = reduce_event(tables, JobState(), start)
    assert isinstance(state, JobState)
    for _ in range(LONGEST):
        if state.end or state.frames[0].inside != start.tree:
            return state, ""
        event = _next_event(tables, state, answers, case)
        if isinstance(event, Refused):
            return state, event.message
        following = reduce_event(tables, state, event)
        if isinstance(following, Refused) and isinstance(event, Answer) and event.readings:
            following = _with_words(tables, state, event, answers, following)
        if isinstance(following, Refused):
            return state, f"at `{state.frames[-1].step}`: {following.message}"
        state = following
    return state, "it goes around in circles"


def _next_event(
    tables: WalkTables, state: JobState, answers: _Answers, case: Case
) -> Event | Refused:
    shown = screen(tables, state)
    if "asks" in shown:
        return _fill(shown["asks"][0]["name"], case)
    if "unread" in shown:
        return Acknowledge(hazards=tuple(shown["unread"]))
    frame, row = state.frames[-1], row_of(tables, state.frames[-1])
    if row["kind"] == "action":
        return Done()
    if "by" in row and answers.ran(row["by"]["procedure"]):
        return RunProcedure()
    answer = answers.take(frame.place)
    if answer is None:
        return Refused(f"it asks `{frame.step}`, which the job never answered")
    if answer.result == CANNOT_TEST:
        return CannotTest(seen="closed job")
    if answer.result == NONE_OF_THESE:
        return NoneOfThese(seen="closed job")
    readings = {name: str(text) for name, text in answer.measured.items()}
    if readings and not answer.stated:
        return Answer(readings=readings)
    return _answer_in_words(tables, state, answer)


def _fill(name: str, case: Case) -> Fill | Refused:
    value = case.asked.get(name) or case.lists.get(name)
    if value is None:
        return Refused(f"it asks for `{name}`, which the job didn't note")
    return Fill(name=name, value=str(value) if isinstance(value, str) else tuple(map(str, value)))


def _answer_in_words(tables: WalkTables, state: JobState, answer: CaseStep) -> Answer | Refused:
    row = row_of(tables, state.frames[-1])
    texts = [one["text"] for one in row.get("results", ())]
    if answer.result not in texts:
        step = state.frames[-1].step
        return Refused(f"`{step}` has no result `{answer.result}` any more")
    stated = answer.stated or "by" in row or bool(row.get("readings"))
    return Answer(result=texts.index(str(answer.result)), stated=stated)


def _with_words(
    tables: WalkTables, state: JobState, event: Answer, answers: _Answers, refused: Refused
) -> JobState | Refused:
    """Answer again where readings are too close to call: then the tech chose a result."""
    assert answers.last
    words = _answer_in_words(tables, state, answers.last)
    if isinstance(words, Refused):
        return refused
    return reduce_event(tables, state, Answer(result=words.result, readings=event.readings))
