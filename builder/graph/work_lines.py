"""What is compared across trees: work with hands, hours of fixes, prices of parts.

In: a `Tree`. Out: its `Work` and `Labor`, with their positions.
"""

from collections.abc import Iterator
from decimal import Decimal
from sys import intern

from builder.model.ends import Fix
from builder.model.summary import Labor, Work, normalized
from builder.model.tree import Tree

LINES = " / "  # between a question and its lines


def work_of(tree: Tree) -> Iterator[Work]:
    """Yield the checks and actions of a tree that name tools or lines to do."""
    for step in tree.steps.values():
        if not isinstance(step.body, Fix) and (step.tools or step.do):
            yield Work(
                words=intern(normalized(LINES.join((step.text, *step.do)))),
                tools=tuple(intern(str(tool)) for tool in step.tools),
                hazards=tuple(intern(str(name)) for name in step.hazards),
                puts_back=step.put_back is not None,
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
