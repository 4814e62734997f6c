"""The path of a job: what was done, one step after another, and where it ended.

In: the record of a walk that has passed its schema, or a closed job. Out: a `WalkedPath`. What a
procedure did inside belongs to the check that ran it; tests after a repair aren't part of the path.
Free text stands in it only where it names nobody.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from builder.model.knowledge import Case, CaseStep
from builder.walk.case_of_walk import REPAIRED
from builder.walk.job_state import CANNOT_TEST, NONE_OF_THESE, STUCK
from builder.walk.open_text import is_open, secrets_of
from builder.walk.walk_tables import PROCEDURES

LEFT_OUT = "A remark is left out here: it may name the customer or the vehicle"
Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Visit:
    """A step as it was done once. In a procedure that never came back, `step` is ""."""

    inside: str  # ID of the tree, or `procedures/<name>`
    step: str
    kind: str = ""  # check, action, fix, or stop; "" where the file doesn't say
    result: str = ""  # its words; `cannot test` where it couldn't be done
    readings: Mapping[str, str] = field(default_factory=dict)  # with their units
    item: str = ""  # of the list that the step goes through
    remarks: tuple[str, ...] = ()  # what was read, seen, and written down


@dataclass(frozen=True, slots=True)
class WalkedPath:
    """The path of a job; if it has ended, the last visit is the end."""

    origin: str  # in words, for the head of the tree
    tree: str  # ID of the tree in which the job started
    visits: tuple[Visit, ...]
    asked: Mapping[str, str]  # what was answered once for a whole tree, by name
    vehicle: str  # ID
    complaint: str  # "" where it may name somebody


def path_of_record(record: Row) -> WalkedPath:
    """Return the path of a walk."""
    events: Sequence[Row] = record.get("events", ())
    people = [str(event.get(key, "")) for event in events for key in ("who", "to")]
    people += [str(row.get("who", "")) for row in record["steps"]]
    secrets = secrets_of(record.get("job", {}), people)
    rows = [*_without_tests(record["steps"], record.get("ended"))]
    fills = {event["name"]: event["value"] for event in events if event["event"] == "fill"}
    complaint = record["complaint"]
    return WalkedPath(
        origin=f"a walk of {record['tree']}",
        tree=record["tree"],
        visits=(*_without_inner([_visit(row, secrets) for row in rows]), *_end(record, rows)),
        asked={name: text for name, text in fills.items()
               if isinstance(text, str) and is_open(text, secrets)},
        vehicle=record["vehicle"],
        complaint=complaint if is_open(complaint, secrets) else "",
    )  # fmt: skip


def path_of_case(case: Case) -> WalkedPath:
    """Return the path of a closed job."""
    visits = [_visit_of_case(step, str(case.tree)) for step in case.path]
    remarks = [f"Also found: {text}" for text in case.also_found]
    remarks += [f"Verified: {case.verified}"] if case.verified else []
    end = Visit(str(case.fix_in or case.tree), str(case.fix or ""), "fix",
                remarks=tuple(_open(remarks, ())))  # fmt: skip
    return WalkedPath(
        origin=f"the closed job {case.id}",
        tree=str(case.tree),
        visits=(*_without_inner(visits), *([end] if case.fix else [])),
        asked={name: str(text) for name, text in case.asked.items()},
        vehicle=str(case.vehicle.get("id", "")),
        complaint="",
    )


def _without_tests(rows: Sequence[Row], ended: Row | None) -> Iterator[Row]:
    """Yield rows without the tests after a repair, which end at one that failed or at the last."""
    at = 0
    while at < len(rows):
        yield rows[at]
        at += 1 + (_count_tests(rows[at + 1 :], rows[at], ended) if _is_fix(rows[at]) else 0)


def _count_tests(rows: Sequence[Row], fix: Row, ended: Row | None) -> int:
    judged = {at: row["result"] for at, row in enumerate(rows) if row["kind"] == "verify"}
    failed = next((at for at, result in judged.items() if result == "failed"), None)
    if failed is not None and not any(map(_is_fix, rows[:failed])):
        return failed + 1
    if ended and (ended["in"], ended["step"]) == (fix["in"], fix["step"]):
        return len(rows)
    following = next((at for at, row in enumerate(rows) if _is_fix(row)), len(rows))
    return max((at for at in judged if at < following), default=-1) + 1


def _is_fix(row: Row) -> bool:
    return bool(row["kind"] == "fix")


def _end(record: Row, rows: Sequence[Row]) -> Iterator[Visit]:
    """Yield the end of a walk if it isn't the last step that was done, as a repair may be."""
    ended = record.get("ended")
    if not ended or ended["kind"] == STUCK or ended["in"].startswith(PROCEDURES):
        return
    kind = "fix" if ended["kind"] == "fix" else "stop"
    last = rows[-1] if rows else None
    if last and (last["in"], last["step"], last["kind"]) == (ended["in"], ended["step"], kind):
        return
    yield Visit(ended["in"], ended["step"], kind)


def _without_inner(visits: Sequence[Visit]) -> Iterator[Visit]:
    """Yield visits without those inside a procedure; their remarks go to the check that ran it."""
    inside = ""
    remarks: tuple[str, ...] = ()
    for visit in visits:
        if visit.inside.startswith(PROCEDURES):
            inner = (f"In `{visit.step}`: {remark}" for remark in visit.remarks)
            inside, remarks = visit.inside, (*remarks, *inner)
        else:
            yield replace(visit, remarks=(*remarks, *visit.remarks))
            inside, remarks = "", ()
    if inside:
        yield Visit(inside, "", "check", remarks=remarks)


def _visit(row: Row, secrets: frozenset[str]) -> Visit:
    readings = {
        name: f"{one['value']} {one['unit']}".strip() for name, one in row["readings"].items()
    }
    item, result = row.get("item", ""), row["result"]
    return Visit(
        inside=row["in"],
        step=row["step"],
        kind=row["kind"],
        result=result if is_open(result, secrets) else "",
        readings=readings,
        item=item if is_open(item, secrets) else "",
        remarks=tuple(_open(_remarks(row, readings), secrets)),
    )


def _remarks(row: Row, readings: Mapping[str, str]) -> Iterator[str]:
    if readings:
        values = (f"{name} {text}".strip() for name, text in readings.items())
        yield f"Read on this job: {', '.join(values)}"
    if row["stated"]:
        yield "Stated on this job, not measured"
    if seen := row.get("seen"):
        label = {NONE_OF_THESE: "None of these", CANNOT_TEST: "Can't test"}.get(row["result"], "")
        yield f"{label or 'Seen'}: {seen}"
    yield from (f"Written down, {name}: {text}" for name, text in row.get("wrote", {}).items())


def _open(remarks: Sequence[str] | Iterator[str], secrets: frozenset[str] | tuple[()]) -> list[str]:
    return [text if is_open(text, secrets) else LEFT_OUT for text in remarks]


def _visit_of_case(step: CaseStep, tree: str) -> Visit:
    readings = {name: str(text) for name, text in step.measured.items()}
    values = ", ".join(f"{name} {text}".strip() for name, text in readings.items())
    remarks = [f"Read on this job: {values}"] if values else []
    remarks += ["Stated on this job, not measured"] if step.stated else []
    result = str(step.result or "")
    kind = "fix" if result == REPAIRED else ""
    return Visit(str(step.inside or tree), str(step.step), kind, result, readings,
                 remarks=tuple(_open(remarks, ())))  # fmt: skip
