"""The steps of a tree as they stand on its page.

In: a tree and what was worked out about it. Out: `StepView`s, one a step, in reading order; the
template only lays them out.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup, escape

from builder.model.knowledge import Hazard
from builder.model.tree import Action, Check, Fix, Picture, Reading, Step, Stop
from builder.pages import addresses
from builder.pages.page import root_of
from builder.pages.ways import Caller, Plan, Row, Target, result_ways, target
from builder.walk.computed import computed_units
from builder.wording import phrases
from builder.wording.hazards import by_severity


@dataclass(frozen=True, slots=True)
class StepView:
    """One step, ready to be laid out."""

    id: str
    number: int
    kind: str  # check, action, fix, stop
    label: str  # Check, Do, Fix, Stop
    text: str
    note: str
    cautions: tuple[Hazard, ...]
    facts: tuple[tuple[str, Markup], ...]  # name and value, in the order of use
    reading: tuple[str, ...]  # what is to be read, a line each
    ways: tuple[Row, ...]
    then: Target | None
    otherwise: str  # what to do when nothing fits
    several: bool  # more than one result may be true
    callers: tuple[Caller, ...]
    picture: Picture | None
    broken: bool


def step_views(plan: Plan) -> tuple[StepView, ...]:
    """Prepare every step, in reading order."""
    ordered = sorted(plan.tree.steps.values(), key=lambda step: plan.numbers[step.id])
    return tuple(step_view(plan, step) for step in ordered)


def step_view(plan: Plan, step: Step) -> StepView:
    """Prepare one step."""
    body = step.body
    check = body if isinstance(body, Check) else None
    return StepView(
        id=str(step.id),
        number=plan.numbers[step.id],
        kind=step.kind,
        label=phrases.KINDS[step.kind],
        text=str(step.text),
        note=str(step.note or ""),
        cautions=cautions(plan, step),
        facts=tuple(_facts(plan, step)),
        reading=tuple(_readings(check)) if check else (),
        ways=result_ways(plan, step, check) if check else (),
        then=target(plan, step, body.then) if isinstance(body, Action) and body.then else None,
        otherwise=_otherwise(plan, step, check) if check else "",
        several=bool(check and check.several),
        callers=plan.callers[step.id],
        picture=step.picture if step.picture and _has(plan, step.picture) else None,
        broken=step.id in plan.tree.broken,
    )


def cautions(plan: Plan, step: Step) -> tuple[Hazard, ...]:
    """Return the step's cautions, most severe first; ids that no record explains are left out."""
    found = [plan.library.hazards[id_] for id_ in step.hazards if id_ in plan.library.hazards]
    return tuple(by_severity(found))


def _has(plan: Plan, picture: Picture) -> bool:
    return picture.file in plan.library.pictures


def _facts(plan: Plan, step: Step) -> Iterator[tuple[str, Markup]]:
    """Yield what is to be known before the work, while it is done, and after it."""
    yield from _before(plan, step)
    yield from _work(plan, step)
    yield from _after(plan, step)


def _before(plan: Plan, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.each:
        item, listed = step.each
        known = plan.tree.lists.get(listed)
        more = f": {phrases.joined(known)}" if known else " of the vehicle, or as typed at the car"
        yield "For each", Markup("{} of the list {}{}").format(item, listed, more)
    if step.after:
        named = [_step_or_deed(plan, text) for text in step.after]
        yield "Only after", Markup("; ").join(named)
    if step.when:
        yield "When", Markup("; ").join(step.when)
    if step.tools:
        yield "Tools", Markup(", ").join(_tool(plan, id_) for id_ in step.tools)
    if step.how_to:
        yield "How to", _article(plan, step.how_to)
    if step.same_as:
        yield "Done as in", _step_link(plan, step.same_as)


def _work(plan: Plan, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.minutes is not None or step.wait is not None:
        yield "Time", escape(_time(step))
    if step.people is not None:
        yield "People", escape(phrases.number(step.people))
    if step.does:
        done = phrases.joined(phrases.deed(deed, plan.library) for deed in step.does)
        yield "Serves to", escape(done)
    if step.write_down:
        yield "Write down", Markup(", ").join(step.write_down)


def _after(plan: Plan, step: Step) -> Iterator[tuple[str, Markup]]:
    if step.put_back:
        yield "Before the job ends", escape(step.put_back)
    if step.at_most is not None:
        times = phrases.number(step.at_most)
        often = "once" if times == "1" else f"{times} times"
        yield "At most", Markup("{} in one job, then {}").format(often, _spent(plan, step))
    elif step.spent:
        yield "List at its end", _target_link(target(plan, step, step.spent))


def _spent(plan: Plan, step: Step) -> Markup:
    if step.spent:
        return _target_link(target(plan, step, step.spent))
    return escape(phrases.stuck(plan.library.shop))


def _time(step: Step) -> str:
    parts = []
    if step.minutes is not None:
        parts.append(f"{phrases.number(step.minutes)} min work")
    if step.wait is not None:
        parts.append(f"{phrases.number(step.wait)} min wait")
    return ", then ".join(parts)


def _tool(plan: Plan, id_: str) -> Markup:
    tool = plan.library.tools.get(id_)
    if not tool:
        return escape(id_)
    kept = Markup(" <small>({})</small>").format(tool.kept) if tool.kept else ""
    href = _href(plan, "tools", f"tool-{id_}")
    return Markup('<a href="{}">{}</a>{}').format(href, tool.name, kept)


def _article(plan: Plan, id_: str) -> Markup:
    article = plan.library.how_tos.get(id_)
    if not article:
        return escape(id_)
    return Markup('<a href="{}">{}</a>').format(_href(plan, addresses.how_to(id_)), article.title)


def _href(plan: Plan, path: str, anchor: str = "") -> str:
    return root_of(addresses.tree(plan.tree.id)) + addresses.link(path, anchor)


def _step_or_deed(plan: Plan, text: str) -> Markup:
    if text in plan.tree.steps:
        return _step_link(plan, text)
    return escape(phrases.required(text))


def _step_link(plan: Plan, id_: str) -> Markup:
    step = plan.tree.steps.get(id_)
    if not step:
        return escape(id_)
    number, href = plan.numbers[step.id], addresses.step(step.id)
    return Markup('<a href="#{}">step {}, {}</a>').format(href, number, step.text)


def _target_link(to: Target) -> Markup:
    text = f"step {to.number}, {to.text}" if to.number else to.text
    return Markup('<a href="{}">{}</a>').format(to.href, text) if to.href else escape(text)


def _readings(check: Check) -> Iterator[str]:
    for reading in check.readings:
        yield _reading(reading)
    units = computed_units(check)
    for computed in check.computed:
        found = units[str(computed.name)]
        sign = f", in {phrases.sign(found)}" if found else ""
        yield f"{phrases.sentence(computed.name)} is worked out: {computed.expression}{sign}"
    if figure := check.figure:
        ask = "from and to" if figure.kind == "band" else "one limit"
        origin = f"; {figure.origin}" if figure.origin else "; note where it was found"
        yield f"Look up first: {figure.look_up}, in {phrases.sign(figure.unit)} ({ask}){origin}"


def _reading(reading: Reading) -> str:
    name = f"{phrases.sentence(reading.name)}: " if reading.name else "Reading: "
    if reading.one_of:
        return f"{name}{phrases.joined(reading.one_of, 'or')}"
    top = "OL" if reading.to_over else phrases.number(reading.high)
    sign = phrases.sign(reading.unit)
    text = f"{name}{phrases.number(reading.low)} to {top} {sign}"
    if reading.resolution is not None:
        text += f", read to {phrases.number(reading.resolution)} {sign}"
    return text + (f" (limits: {reading.origin})" if reading.origin else "")


def _otherwise(plan: Plan, step: Step, check: Check) -> str:
    stuck = phrases.stuck(plan.library.shop)
    if not check.could_not:
        return f"None of these, or could not be done: {stuck}."
    to = target(plan, step, check.could_not)
    text = f"step {to.number}, {to.text}" if to.number else to.text
    return f"Could not be done: {text}. None of these: {stuck}."


def is_end(step: Step) -> bool:
    """Whether a walk ends here."""
    return isinstance(step.body, Fix | Stop)
