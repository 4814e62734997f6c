"""A closed job as a file, so that the check can play it again.

In: a shop, a `Case`. Out: its file `kb/cases/<id>.yml`, or why none was written.
"""

from collections.abc import Iterator
from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.not_written import NotWritten
from builder.authoring.written_yaml import flow, scalar
from builder.model.knowledge import Case, CaseStep

_HEAD = "# yaml-language-server: $schema=../../.schemas/case.schema.json\nformat: 2\n"


def new_case(shop: Path, case: Case) -> Path | NotWritten:
    """Write a closed job; the same job filed before has the same name."""
    written = write_new(shop, f"kb/cases/{case.id}.yml", case_text(case))
    if isinstance(written, NotWritten):
        return NotWritten(f"this job is filed already: {written.message}", written.hint)
    return written


def case_text(case: Case) -> str:
    """Return the file of a closed job."""
    return _HEAD + "".join(f"{line}\n" for line in _lines(case))


def _lines(case: Case) -> Iterator[str]:
    yield f"case: {case.id}"
    yield f"tree: {scalar(case.tree)}"
    if case.revision:
        yield f"revision: {scalar(case.revision)}"
    if case.vehicle:
        yield f"vehicle: {flow(case.vehicle)}"
    yield f"dates: {{opened: {case.opened}, closed: {case.closed}}}"
    if case.walked:
        yield "walked: yes"
    if case.asked:
        yield f"asked: {flow(case.asked)}"
    if case.lists:
        yield "lists:"
        yield from (f"  {scalar(name)}: {flow(items)}" for name, items in case.lists.items())
    yield "path:"
    for step in case.path:
        yield from _step(step)
    if case.fix:
        yield f"fix: {scalar(case.fix)}"
    if case.fix_in:
        yield f"fix_in: {scalar(case.fix_in)}"
    if case.worked is not None:
        yield f"minutes: {{worked: {case.worked}}}"
    yield f"outcome: {case.outcome}"


def _step(step: CaseStep) -> Iterator[str]:
    yield f"  - step: {scalar(step.step)}"
    words = {"in": step.inside, "result": step.result, "reading": step.reading}
    yield from (f"    {name}: {scalar(text)}" for name, text in words.items() if text)
    if step.readings:
        yield f"    readings: {flow(step.readings)}"
    if step.stated:
        yield "    stated: yes"
