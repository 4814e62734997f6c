"""What is compared across trees: work with hands, hours of fixes, prices of parts, limits.

In: a `Tree`. Out: its `Work`, `Labor` and `JudgedBy`, with their positions.
"""

from collections.abc import Iterator
from decimal import Decimal
from sys import intern

from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.summary import JudgedBy, Labor, Work, normalized
from builder.model.tree import Step, Tree

LINES = " / "  # between a question and its lines


def work_of(tree: Tree) -> Iterator[Work]:
    """Yield the checks and actions of a tree that name tools or lines to do."""
    for step in tree.steps.values():
        if not isinstance(step.body, Fix) and (step.tools or step.do):
            yield Work(
                words=intern(normalized(LINES.join((step.text, *step.do)))),
                tools=tuple(intern(str(tool)) for tool in step.tools),
                hazards=tuple(intern(str(name)) for name in step.hazards),
                puts_back=intern(normalized(step.put_back or "")),
                how_to=intern(str(step.how_to or "")),
                at=step.text.at,
            )


def labor_of(tree: Tree) -> Iterator[Labor]:
    """Yield the hours of a tree's fixes."""
    for step in tree.steps.values():
        if isinstance(step.body, Fix) and step.body.hours:
            hours = step.body.hours
            plain = Decimal(hours)
            yield Labor(intern(normalized(step.text)), plain, plain, hours.at)


def minutes_of(tree: Tree) -> Iterator[Labor]:
    """Yield the minutes of a tree's checks and actions."""
    for step in tree.steps.values():
        if step.minutes and not isinstance(step.body, Fix):
            plain = Decimal(step.minutes)
            yield Labor(intern(normalized(step.text)), plain, plain, step.minutes.at)


def prices_of(tree: Tree) -> Iterator[Labor]:
    """Yield the prices of the parts of a tree's fixes."""
    for step in tree.steps.values():
        for part in step.body.parts if isinstance(step.body, Fix) else ():
            if part.price:
                name = intern(normalized(part.part))
                yield Labor(name, part.price.low, part.price.high, part.part.at)


def judged_of(tree: Tree) -> Iterator[JudgedBy]:
    """Yield by which spec a tree judges its measurements, and with which load it tests parts."""
    for step in tree.steps.values():
        if not isinstance(step.body, Check):
            continue
        for spec in [one.spec for one in step.body.readings if one.spec and not one.name]:
            yield JudgedBy(intern(_asked(step)), intern(str(spec)), spec.at)
        part, load = (step.body.with_.get(name) for name in ("part", "load"))
        if part and load and step.body.by:
            yield JudgedBy(intern(f"{step.body.by}: {part}"), intern(str(load)), load.at)


def _asked(step: Step) -> str:
    """Return the question of a measurement, the place where it's taken, and the states."""
    where = step.where
    places = (where.phrase, where.part, *where.pins) if where else ()
    states = (f"{need.condition} {need.value or ''}" for need in step.needs)
    return normalized(LINES.join((step.text, *filter(None, places), *sorted(states))))
