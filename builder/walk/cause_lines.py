"""Cause and correction of a job, as the story has them.

In: what a walk found, or the steps of one that found nothing. Out: lines. What was said once is not
asked for again: a blank is there only where neither tree nor tech names the one thing.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import takewhile

from builder.graph.runs import with_values
from builder.model.ends import Drive, StopKind
from builder.walk.diagnosis import Diagnosis, before_repair
from builder.walk.fix_words import drive_of
from builder.walk.job_details import BLANK
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, STUCK, JobState
from builder.walk.known_words import own_words
from builder.walk.measured import MeasuredCheck, asked_words
from builder.walk.measured_lines import evidence_lines
from builder.walk.steps_taken import StepTaken
from builder.walk.told import named, row_of
from builder.walk.walk_tables import WalkTables
from builder.wording.bay_shorthand import written_out
from builder.wording.drive_condition import driving_lines
from builder.wording.past_tense import PAST, past_tense
from builder.wording.sentences import capitalized, uncapitalized

_SEVERAL = re.compile(r" or | if ")
_BARE = re.compile(r"^(?:yes|no)$| spec$")  # says nothing beside its question
PLACE_LABEL, PLACES = "Where", "side, axle, or cylinder"
HANDED, HANDED_ON = "handed", ("foreman", "not-this-tree", "unsafe")  # somebody else goes on
_TO = re.compile(r"(?:Ask|Call|Hand it to) (?P<who>[^,]+)(?:, (?P<rest>.+))?")
_MORE_ORDERS = (
    "back", "call", "do", "don't", "estimate", "follow", "give", "keep", "look", "never", "offer",
    "price", "scan", "stand", "test", "then",
)  # fmt: skip
_ORDER = re.compile(
    rf"(?!charge port)(?:{'|'.join([*PAST, *_MORE_ORDERS])})\b", re.IGNORECASE
)  # of a stop; a charge port is a part
SINCE = f"Result, if checked since: {BLANK}"


def cause_lines(found: Diagnosis) -> list[str]:
    """Return the cause and what convicts it; a blank where it is more than one thing."""
    likely = "Likely, not all of it was checked: " if found.unproved else ""
    blank = [f"Exactly what: {BLANK * 3}"] if is_cause_open(found) else []
    return [f"{likely}{found.cause or found.repair}.", *blank, *_evidence(found)]


def is_cause_open(found: Diagnosis) -> bool:
    """Whether the cause names more than one thing, and neither tech nor answer says which."""
    says = any(found.own_words.get(name) for name in ("cause", "repair"))
    several = bool(_SEVERAL.search(found.cause))
    return several and not (says or any(_decides(one, found.cause) for one in found.evidence[:1]))


def _decides(check: MeasuredCheck, cause: str) -> bool:
    """Whether an answer says which of several things it was, or leaves that to a pen itself.

    An answer that shares no word with the cause says nothing of it.
    """
    is_word = not check.values and not _BARE.search(check.result)
    is_of_cause = is_word and bool(_content(check.result) & _content(cause))
    return bool(is_of_cause or check.seen or check.parts or check.unwritten)


def _content(text: str) -> set[str]:
    return {word[:5] for word in re.findall(r"[a-z]{4,}", text.casefold())}


def worst_first(evidence: Iterable[MeasuredCheck]) -> list[MeasuredCheck]:
    """Return what convicts a fix with the readings that are out of their limits ahead."""
    return sorted(evidence, key=lambda one: not (one.is_out or any(it.is_out for it in one.inner)))


def _evidence(found: Diagnosis) -> Iterator[str]:
    """Yield what convicts the fix, and what it should rest on but nobody checked."""
    for check in found.led:
        yield from evidence_lines(check)
    for check in worst_first(found.evidence):
        yield from evidence_lines(check)
        yield from (f"{capitalized(name)}: {BLANK * 2}" for name in check.unwritten)
        if check.stated:
            yield SINCE
    for asked in found.unproved:
        yield f"Not checked on this job: {asked_words(asked)} {SINCE}"


def no_cause_lines(tables: WalkTables, state: JobState, taken: Sequence[StepTaken]) -> list[str]:
    """Return how a walk ended that came to no fix."""
    if state.end is None:
        return ["Not found yet: the walk goes on."]
    if state.end.kind == STUCK:
        to = own_words(state).get(HANDED) or BLANK * 2
        return [*_stuck(tables, taken), f"Referred to the foreman: {to}"]
    row = row_of(tables, state.frames[0])
    drive, why = drive_of(tables, state)
    outcome, who, advice = ended_words(with_values(row["text"], named(tables, state.frames[0])))
    own, is_theirs = own_words(state), state.end.kind == StopKind.CUSTOMER
    to = own.get(HANDED) or BLANK * 2
    lines = [
        f"No cause proved on this job. {outcome}".rstrip(),
        f"Driving: {' '.join(driving_lines(Drive(drive), why))}" if drive else "",
        f"Advice: {' '.join(filter(None, [advice, row.get('note', '')]))}",
        f"Referred to {who}: {to}" if state.end.kind in HANDED_ON else "",
        f"The customer decided: {own.get('chosen') or BLANK * 2}" if is_theirs else "",
    ]
    return [one for one in lines if one and one != "Advice: "]


def ended_words(text: str) -> tuple[str, str, str]:
    """Split the words of a stop: what came out, who goes on, and the advice for them.

    The record of a job tells what was done; an order to the tech is none of it.
    """
    if match := _TO.fullmatch(text):
        return _sentence([match["rest"]] if match["rest"] else []), match["who"], ""
    clauses = text.split(", ")
    orders = [one for one in clauses if _ORDER.match(one)]
    rest = [one for one in clauses if one not in orders]
    return _sentence(rest), "the foreman", _sentence(orders)


def _sentence(clauses: Sequence[str]) -> str:
    return f"{capitalized(', '.join(clauses))}." if clauses else ""


def _stuck(tables: WalkTables, taken: Sequence[StepTaken]) -> list[str]:
    """Return why the tree had no way on: nothing fits, or a check that can't be done here."""
    last = [*takewhile(lambda one: one.entry.result == CANNOT_TEST, reversed(taken))][-1:]
    if not last:
        seen = [one.entry.seen for one in taken if one.entry.result == NONE_OF_THESE][-1:]
        return ["Not found: no result of the tree fits.", *(f"Seen: {one}" for one in seen if one)]
    step = row_of(tables, last[0].frame)["text"]
    words = with_values(step, named(tables, last[0].frame))
    reason = last[0].entry.seen
    lines = [f"Not found: this can't be tested here: {words}", f"In the way: {reason}"]
    return lines if reason else lines[:1]


def unwritten(tables: WalkTables, state: JobState, done: StepTaken) -> list[str]:
    """Return what a repair asks to write down and nobody did: weights, oil, torques."""
    names = row_of(tables, state.frames[0]).get("write_down", [])
    return [name for name in names if not done.entry.wrote.get(name)]


def correction_lines(
    tables: WalkTables, found: Diagnosis | None, state: JobState, taken: Sequence[StepTaken]
) -> list[str]:
    """Return what was done and where, with blanks for what nobody said of it."""
    if found is None:
        return ["Nothing was repaired."]
    before = before_repair(state, taken)
    done = taken[len(before) : len(before) + 1]
    if not done:
        return ["Not done yet."]
    noted = done[0].entry.wrote.items()
    wrote = [f"{capitalized(name)}: {written_out(text)}" for name, text in noted]
    wrote += [f"{capitalized(name)}: {BLANK}" for name in unwritten(tables, state, done[0])]
    blank = [f"Exactly what was done: {BLANK * 3}"] if is_repair_open(found) else []
    torques = _torque_lines(row_of(tables, state.frames[0]).get("torques", []), found)
    own = _content(found.own_words.get("repair", ""))
    tried = [
        f"Done before that, the fault stayed: {text}."
        for text in earlier_repairs(tables, before)
        if not _content(text) <= own
    ]
    return [*tried, f"{_done_text(found)}.", *place_lines(found), *blank, *torques, *wrote]


def earlier_repairs(tables: WalkTables, before: Sequence[StepTaken]) -> Iterator[str]:
    """Yield the repairs after which the fault was still there: `replaced the spark plugs`."""
    for one in before:
        if one.entry.kind == "fix":
            text = with_values(row_of(tables, one.frame)["text"], named(tables, one.frame))
            yield uncapitalized(past_tense(text))


def _torque_lines(torques: Sequence[str], found: Diagnosis) -> list[str]:
    """Return what is torqued at the end, to be ticked unless the tech wrote of it."""
    if not torques or "torque" in " ".join(found.own_words.values()).casefold():
        return []
    return [f"Torqued to spec after the repair: ☐ {'  ☐ '.join(torques).replace('-', ' ')}"]


def is_repair_open(found: Diagnosis) -> bool:
    """Whether the tree's words name more than one thing to do, and the tech wrote nothing."""
    return bool(_SEVERAL.search(found.repair)) and not found.own_words.get("repair")


def place_lines(found: Diagnosis) -> list[str]:
    """Return where it is: a side, an axle, a cylinder; nothing where there is one such part."""
    if place := place_beside(found):
        return [f"{PLACE_LABEL}: {place}"]
    return [f"{PLACE_LABEL} ({PLACES}): {BLANK * 2}"] if found.needs_place else []


def place_beside(found: Diagnosis) -> str:
    """Return where it is, unless cause or repair say so."""
    words = f"{found.cause} {found.repair}".casefold()
    return "" if found.place.casefold() in words else found.place


def _done_text(found: Diagnosis) -> str:
    """Return what was done; the tech's own words stay where their verb isn't known."""
    done = past_tense(found.repair)
    return capitalized(done.removeprefix("Done: ")) if found.own_words.get("repair") else done
