"""The steps of a tree that run a procedure, with the procedure.

In: the `Facts` of a tree. Out: each such `Running` step whose procedure exists.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from builder.graph.runs import procedure_of
from builder.model.checks import Check
from builder.model.procedures import Procedure
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.rule import Facts

VALUE = re.compile(r"<([a-z][a-z0-9_-]*)>")  # what a procedure is told, in its texts


@dataclass(frozen=True, slots=True)
class Running:
    """A step that runs a procedure."""

    step: Step
    check: Check
    by: Text
    procedure: Procedure


def steps_that_run(facts: Facts) -> Iterator[Running]:
    """Yield every step without a text error whose `by` names a procedure of the shop."""
    for step in facts.steps:
        procedure = procedure_of(step, facts.library.procedures)
        if procedure and isinstance(step.body, Check) and step.body.by:
            yield Running(step, step.body, step.body.by, procedure)


def other_word(running: Running) -> tuple[Text, Text] | None:
    """Return the one result that the procedure never returns, and the one word without a result.

    Where there is one of each, the first was written for the second.
    """
    results = [result.text for result in running.check.results]
    unknown = [text for text in results if text not in running.procedure.returns]
    free = [word for word in running.procedure.returns if word not in results]
    return (unknown[0], free[0]) if len(unknown) == len(free) == 1 else None


def meant_procedure(facts: Facts, running: Running) -> str | None:
    """Return the one other procedure that returns all results of a step, where its own has none."""
    results = {str(result.text) for result in running.check.results}
    if not results or results & {*map(str, running.procedure.returns)}:
        return None
    others = [name for name, one in facts.library.procedures.items()
              if {*map(str, one.returns)} == results]  # fmt: skip
    return others[0] if len(others) == 1 else None


def led_past(running: Running) -> str:
    """Return the step that comes once the procedure has passed, or nothing."""
    passed = running.procedure.returns[0]
    ways = (one.branch for one in running.check.results if one.text == passed)
    return next((str(way.step) for way in ways if way.step and not way.tree), "")
