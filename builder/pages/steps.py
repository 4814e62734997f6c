"""The steps of a tree as its page shows them.

In: a tree and its analysis. Out: a `StepView` for each step, in reading order; the template only
lays them out.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from builder.model.checks import Check, Reading
from builder.model.knowledge import Hazard
from builder.model.tree import Action, Picture, Step
from builder.pages.branches import (
    BranchRow,
    BranchTarget,
    IncomingBranch,
    TreeContext,
    branch_target,
    result_rows,
    target_text,
)
from builder.pages.step_facts import step_facts
from builder.walk.computed_readings import computed_units
from builder.wording.hazards import by_severity
from builder.wording.labels import STEP_LABELS
from builder.wording.sentences import capitalized, joined, stuck_advice
from builder.wording.value_text import number_text, unit_label


@dataclass(frozen=True, slots=True)
class StepView:
    """One step, ready to be laid out."""

    id: str
    number: int
    kind: str  # check, action, fix, stop, return
    label: str  # Check, Do, Fix, Stop, Return
    text: str
    note: str
    do: tuple[str, ...]  # lines, done before the answer
    cautions: tuple[Hazard, ...]
    facts: tuple[tuple[str, Markup], ...]  # name and value, in the order of use
    readings: tuple[str, ...]  # what to read, a line each
    results: tuple[BranchRow, ...]
    then: BranchTarget | None
    otherwise: str  # what to do when no result matches
    several: bool  # more than one result may match
    incoming: tuple[IncomingBranch, ...]
    picture: Picture | None
    broken: bool


def step_views(context: TreeContext) -> tuple[StepView, ...]:
    """Prepare every step, in reading order."""
    ordered = sorted(context.tree.steps.values(), key=lambda step: context.numbers[step.id])
    return tuple(_step_view(context, step) for step in ordered)


def _step_view(context: TreeContext, step: Step) -> StepView:
    body = step.body
    check = body if isinstance(body, Check) else None
    then = body.then if isinstance(body, Action) else None
    return StepView(
        id=str(step.id),
        number=context.numbers[step.id],
        kind=step.kind,
        label=STEP_LABELS[step.kind],
        text=str(step.text),
        note=str(step.note or ""),
        do=tuple(map(str, step.do)),
        cautions=step_cautions(context, step),
        facts=tuple(step_facts(context, step)),
        readings=tuple(_readings(check)) if check else (),
        results=result_rows(context, step, check) if check else (),
        then=branch_target(context, step, then) if then else None,
        otherwise=_otherwise(context, step, check) if check else "",
        several=bool(check and check.several),
        incoming=context.incoming[step.id],
        picture=step.picture if step.picture and _is_on_file(context, step.picture) else None,
        broken=step.id in context.tree.broken,
    )


def step_cautions(context: TreeContext, step: Step) -> tuple[Hazard, ...]:
    """Return the step's cautions, most severe first; hazards without a record are left out."""
    records = context.library.hazards
    return tuple(by_severity(records[id_] for id_ in step.hazards if id_ in records))


def _is_on_file(context: TreeContext, picture: Picture) -> bool:
    return picture.file in context.library.pictures


def _readings(check: Check) -> Iterator[str]:
    for reading in check.readings:
        yield _reading(reading)
    units = computed_units(check)
    for computed in check.computed:
        symbol = units[str(computed.name)]
        unit = f", in {unit_label(symbol)}" if symbol else ""
        yield f"{capitalized(computed.name)} is calculated: {computed.expression}{unit}"
    if figure := check.figure:
        ask = "low and high" if figure.kind == "band" else "one limit"
        origin = f"; {figure.origin}" if figure.origin else "; note where you found it"
        yield f"Look up: {figure.look_up}, in {unit_label(figure.unit)} ({ask}){origin}"


def _reading(reading: Reading) -> str:
    name = f"{capitalized(reading.name)}: " if reading.name else "Reading: "
    if reading.spec:
        name += f"{reading.spec.replace('-', ' ')}, "
    if reading.one_of:
        return f"{name}{joined(reading.one_of, 'or')}"
    top = "OL" if reading.to_over else number_text(reading.high)
    unit = unit_label(reading.unit)
    text = f"{name}{number_text(reading.low)} to {top} {unit}"
    if reading.resolution is not None:
        text += f", to {number_text(reading.resolution)} {unit}"
    return text + (f"; source: {reading.origin}" if reading.origin else "")


def _otherwise(context: TreeContext, step: Step, check: Check) -> str:
    stuck = capitalized(stuck_advice(context.library.shop))
    if not check.cannot_test:
        return f"No match, or can't do it? {stuck}."
    target = branch_target(context, step, check.cannot_test)
    return f"Can't do it? {capitalized(target_text(target))}. No match? {stuck}."
