"""What a tech needs to know of a step before the work, during it, and after it.

In: a step and its tree. Out: names and values in the order of use, as HTML in which all text of
authors is escaped.
"""

from collections.abc import Iterator
from fractions import Fraction

from markupsafe import Markup, escape

from builder.model.checks import Check
from builder.model.tree import Need, ProcedureRun, Step
from builder.pages import addresses
from builder.pages.branches import BranchTarget, TreeContext, branch_target, target_text
from builder.wording.sentences import joined, requirement_text, stuck_advice, task_text
from builder.wording.value_text import duration_text, number_text
from builder.wording.vehicle_words import condition_texts, need_text, part_name, where_text


def step_facts(context: TreeContext, step: Step) -> Iterator[tuple[str, Markup]]:
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
    if isinstance(step.body, Check) and step.body.told:
        yield "Answer", escape("told or looked up, not seen on the vehicle")
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
    text = target_text(target)
    return Markup('<a href="{}">{}</a>').format(target.href, text) if target.href else escape(text)
