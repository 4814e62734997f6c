"""A closed job as a file, so that the check can play it again.

In: a shop, a `Case`. Out: its file `kb/cases/<id>.yml`, or why none was written.
"""

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from builder.authoring.new_file import write_new
from builder.authoring.not_written import NotWritten
from builder.model.knowledge import Case, CaseStep

_HEAD = "# yaml-language-server: $schema=../../.schemas/case.schema.json\nformat: 2\n"
_PLAIN = re.compile(r"[A-Za-z0-9/](?:[\w ./%()<>°-]*[\w.%)>°])?")  # needs no quotes


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
    yield f"tree: {_scalar(case.tree)}"
    if case.revision:
        yield f"revision: {_scalar(case.revision)}"
    if case.vehicle:
        yield f"vehicle: {_flow(case.vehicle)}"
    yield f"dates: {{opened: {case.opened}, closed: {case.closed}}}"
    if case.walked:
        yield "walked: yes"
    if case.asked:
        yield f"asked: {_flow(case.asked)}"
    if case.lists:
        yield "lists:"
        yield from (f"  {_scalar(name)}: {_list(items)}" for name, items in case.lists.items())
    yield "path:"
    for step in case.path:
        yield from _step(step)
    if case.fix:
        yield f"fix: {_scalar(case.fix)}"
    if case.fix_in:
        yield f"fix_in: {_scalar(case.fix_in)}"
    if case.worked is not None:
        yield f"minutes: {{worked: {case.worked}}}"
    yield f"outcome: {case.outcome}"


def _step(step: CaseStep) -> Iterator[str]:
    yield f"  - step: {_scalar(step.step)}"
    words = {"in": step.inside, "result": step.result, "reading": step.reading}
    yield from (f"    {name}: {_scalar(text)}" for name, text in words.items() if text)
    if step.readings:
        yield f"    readings: {_flow(step.readings)}"
    if step.stated:
        yield "    stated: yes"


def _flow(values: Mapping[str, str]) -> str:
    pairs = ", ".join(f"{_scalar(name)}: {_scalar(text)}" for name, text in values.items())
    return f"{{{pairs}}}"


def _list(items: Sequence[str]) -> str:
    return f"[{', '.join(map(_scalar, items))}]"


def _scalar(text: str) -> str:
    """Write a text in quotes where YAML needs them."""
    return str(text) if _PLAIN.fullmatch(text) else json.dumps(str(text), ensure_ascii=False)
