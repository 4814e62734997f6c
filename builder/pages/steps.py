"""The steps of a tree as its page shows them.

In: a tree and its analysis. Out: a `StepView` for each step, in reading order; the template only
lays them out.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup, escape

from builder.model.checks import Check, Reading
from builder.model.knowledge import Hazard
from builder.model.tree import Action, Need, Picture, ProcedureRun, Step
from builder.pages import addresses
from builder.pages.branches import (
    BranchRow,
    BranchTarget,
    IncomingBranch,
    TreeContext,
    branch_target,
    result_rows,
)
from builder.walk.computed_readings import computed_units
from builder.wording.hazards import by_severity
from builder.wording.labels import STEP_LABELS
from builder.wording.sentences import capitalized, joined, requirement_text, stuck_advice, task_text
from builder.wording.value_text import duration_text, number_text, unit_label
from builder.wording.vehicle_words import condition_texts, need_text, part_name, where_text


@dataclass(frozen=True, slots=True)
class StepView:
    """One step, ready to be laid out."""

    id: str
    number: int
    kind: str  # check, action, fix, stop
    label: str  # Check, Do, Fix, Stop
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
        facts=tuple(_facts(context, step)),
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


def _facts(context: TreeContext, step: Step) -> Iterator[tuple[str, Markup]]:
    """Yield what the tech needs to know before the work, during it, and after it."""
    yield from _facts_before(context, step)
    yield from _facts_of_work(context, step)
    yield from _facts_after(context, step)


def _facts_before(context: TreeContext, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.each:
        item, list_name = step.each
        items = context.tree.lists.get(list_name)
        more = f": {joined(items)}" if items else " of the vehicle, or as you enter it"
        yield "Repeat for each", Markup("{} of the list {}{}").format(item, list_name, more)
    if step.after:
        required = [_step_or_task(context, text) for text in step.after]
        yield "Do first", Markup("; ").join(required)
    if conditions := condition_texts(step, context.library):
        yield "Conditions", Markup("; ").join(conditions)
    if step.hook_up:
        yield "Hook up with", escape(need_text(Need(step.hook_up), context.library))
    if step.where:
        yield "Where", escape(where_text(step.where, context.library))
    if isinstance(step.body, Check) and step.body.by:
        yield "Procedure", _procedure(context, step.body)
    if step.tools:
        yield "Tools", Markup(", ").join(_tool(context, id_) for id_ in step.tools)
    if step.how_to:
        yield "How-to", _article(context, step.how_to)
    if step.same_as:
        yield "Same method as", _step_link(context, step.same_as)


def _facts_of_work(context: TreeContext, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.minutes is not None or step.wait is not None:
        yield "Time", escape(_time(step))
    elif step.run and (limits := run_time(step.run)):
        yield "Time", escape(limits)
    if step.people is not None:
        yield "People needed", escape(number_text(step.people))
    if step.does:
        tasks = joined(task_text(task, context.library) for task in step.does)
        yield "Purpose", escape(tasks)
    if step.write_down:
        yield "Record", Markup(", ").join(step.write_down)


def _facts_after(context: TreeContext, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.put_back:
        yield "Put back", escape(step.put_back)
    if step.at_most is not None:
        count = number_text(step.at_most)
        times = "once" if count == "1" else f"{count} times"
        yield "Limit", Markup("{}, then {}").format(times, _spent(context, step))
    elif step.spent:
        yield "When the list is done", _target_link(branch_target(context, step, step.spent))


def _spent(context: TreeContext, step: Step) -> Markup:
    if step.spent:
        return _target_link(branch_target(context, step, step.spent))
    return escape(stuck_advice(context.library.shop))


def _time(step: Step) -> str:
    parts = []
    if step.minutes is not None:
        parts.append(f"{number_text(step.minutes)} min")
    if step.wait is not None:
        parts.append(f"wait {duration_text(Fraction(step.wait))}")
    return ", then ".join(parts)


def run_time(run: ProcedureRun) -> str:
    """Write how long a procedure takes, from its shortest to its longest word."""
    low = min(one.shortest for one in run.outcomes.values())
    high = max(one.longest for one in run.outcomes.values())
    if not high:
        return ""
    waits = ", plus waiting" if any(one.wait for one in run.outcomes.values()) else ""
    if round(low) == round(high):
        return f"{duration_text(high)}{waits}"
    return f"{duration_text(low)} to {duration_text(high)}{waits}"


def _tool(context: TreeContext, id_: str) -> Markup:
    tool = context.library.tools.get(id_)
    if not tool:
        return escape(id_)
    place = Markup(" <small>({})</small>").format(tool.kept) if tool.kept else ""
    href = _href(context, "tools", f"tool-{id_}")
    return Markup('<a href="{}">{}</a>{}').format(href, tool.name, place)


def _article(context: TreeContext, id_: str) -> Markup:
    article = context.library.how_tos.get(id_)
    if not article:
        return escape(id_)
    href = _href(context, addresses.how_to_path(id_))
    return Markup('<a href="{}">{}</a>').format(href, article.title)


def _href(context: TreeContext, path: str, anchor: str = "") -> str:
    return addresses.href(addresses.page_of(context.tree), path, anchor)


def _procedure(context: TreeContext, check: Check) -> Markup:
    known = context.library.procedures.get(str(check.by))
    title = escape(check.by or "")
    if known:
        href = _href(context, addresses.procedure_path(known.name))
        title = Markup('<a href="{}">{}</a>').format(href, known.tree.title)
    given = (f"{name} {part_name(value, context.library)}" for name, value in check.with_.items())
    return Markup("; ").join((title, *given))


def _step_or_task(context: TreeContext, text: str) -> Markup:
    if text in context.tree.steps:
        return _step_link(context, text)
    return escape(requirement_text(text))


def _step_link(context: TreeContext, id_: str) -> Markup:
    step = context.tree.steps.get(id_)
    if not step:
        return escape(id_)
    number, anchor = context.numbers[step.id], addresses.step_anchor(step.id)
    return Markup('<a href="#{}">step {}, {}</a>').format(anchor, number, step.text)


def _target_link(target: BranchTarget) -> Markup:
    text = _target_text(target)
    return Markup('<a href="{}">{}</a>').format(target.href, text) if target.href else escape(text)


def _target_text(target: BranchTarget) -> str:
    return f"step {target.number}, {target.text}" if target.number else target.text


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
    return f"Can't do it? {capitalized(_target_text(target))}. No match? {stuck}."
