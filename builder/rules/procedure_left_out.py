"""A dangerous step that one path reaches past the procedure that comes before such steps elsewhere.

A procedure with `every_time: yes` proves what doesn't last, such as zero volts. Where a tree runs
it, its checks and actions with the same hazard in the same state of the vehicle come after it.

Why: On that path the tech works on something that nobody has made safe.

Wrong:

    # kb/procedures/belt-at-rest.yml
    title: Is the belt at rest?
    returns: [at rest, moving]
    every_time: yes
    steps:
      still:
        check: Do belt and fan stand still, key out?
        when: [key-off]
        hazards: [rotating-parts]
        results:
          - {result: yes, return: at rest}
          - {result: no, return: moving}
    # trees/charging/case.yml
    format: 2
    steps:
      noise:
        check: Where is the noise?
        results: {at the belt: rest, at the pulley: pulley}
      rest:
        check: Is the belt at rest?
        by: belt-at-rest
        results: {at rest: belt, moving: all-good}
      belt:
        check: Is the belt tight?
        when: [key-off]
        hazards: [rotating-parts]
        results: {yes: pulley, no: repair}
      pulley:
        check: Does the pulley turn freely?
        when: [key-off]
        hazards: [rotating-parts]
        results: {yes: all-good, no: repair}

Right:

    # kb/procedures/belt-at-rest.yml
    title: Is the belt at rest?
    returns: [at rest, moving]
    every_time: yes
    steps:
      still:
        check: Do belt and fan stand still, key out?
        when: [key-off]
        hazards: [rotating-parts]
        results:
          - {result: yes, return: at rest}
          - {result: no, return: moving}
    # trees/charging/case.yml
    format: 2
    steps:
      noise:
        check: Where is the noise?
        results: {at the belt: rest, at the pulley: rest-too}
      rest:
        check: Is the belt at rest?
        by: belt-at-rest
        results: {at rest: belt, moving: all-good}
      rest-too:
        check: Is the belt at rest?
        by: belt-at-rest
        results: {at rest: pulley, moving: all-good}
      belt:
        check: Is the belt tight?
        when: [key-off]
        hazards: [rotating-parts]
        results: {yes: pulley, no: repair}
      pulley:
        check: Does the pulley turn freely?
        when: [key-off]
        hazards: [rotating-parts]
        results: {yes: all-good, no: repair}

Fix: Branch to a step that runs the procedure, and from there to this one.
"""

from collections.abc import Iterator

from builder.graph.moves import Move
from builder.graph.precedence import reached_unmet
from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.procedures import Procedure
from builder.model.tree import Action, Step
from builder.rules.shared.order import reached_steps
from builder.rules.shared.procedure_steps import led_past, steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="procedure-left-out",
    family=Family.ORDER,
    severity=Severity.WARNING,
    summary="A dangerous step that a path reaches past the procedure that comes before it.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for the first such step of each path."""
    running = [one for one in steps_that_run(facts) if one.procedure.every_time]
    if not facts.whole or any(one.step.id not in facts.graph.reachable for one in running):
        return  # `unreachable-step` speaks first
    for procedure in {one.procedure.name: one.procedure for one in running}.values():
        runs = {str(one.step.id) for one in running if one.procedure is procedure}
        yield from _past(facts, procedure, runs)


def _past(facts: Facts, procedure: Procedure, runs: set[str]) -> Iterator[Finding]:
    def passes(move: Move) -> bool:
        result = move.route.exit.result
        passed = result is not None and result.text == procedure.returns[0]
        return passed and move.source.step in runs

    # Where another tree leads into the middle, what it did before isn't known here.
    reached = reached_unmet(facts.graph.moves_from, facts.graph.starts[:1], passes)
    needing = {
        str(step.id): place
        for step, place in reached_steps(reached, facts)
        if _is_like(step, procedure)
    }
    for name, place in needing.items():
        before = reached.path_to(place)[:-1]
        if not any(other in needing for other in before):
            step = facts.tree.steps[name]
            yield RULE.finding(
                step.id.at,
                f"a path reaches `{name}` without `{procedure.name}`: "
                f"{' -> '.join((*before, name))}",
                f"on it the tech meets {_hazards(step, procedure)} with nothing made safe",
                _hint(facts, name, procedure, before),
            )


def _hint(facts: Facts, name: str, procedure: Procedure, before: list[str]) -> str:
    """Say which step to branch to, where one runs the procedure and then leads here."""
    running = {str(one.step.id): one for one in steps_that_run(facts)}
    last = before[-1] if before else ""
    if last in running and running[last].procedure is procedure:
        return f"in `{last}`, let only `{procedure.returns[0]}` lead here"
    run = next((run for run, one in running.items() if led_past(one) == name), None)
    start = f"in `{last}`, branch" if last else "lead first"
    there = f"`{run}`, which runs it and" if run else f"a step with `by: {procedure.name}` that"
    return f"{start} to {there} leads here"


def _hazards(step: Step, procedure: Procedure) -> str:
    inner = {name for one in procedure.tree.steps.values() for name in one.hazards}
    return " and ".join(f"`{name}`" for name in step.hazards if name in inner)


def _is_like(step: Step, procedure: Procedure) -> bool:
    """Whether a check or an action has a hazard of the procedure, and a state in which it works."""
    inner = procedure.tree.steps.values()
    is_work = isinstance(step.body, Action) or (isinstance(step.body, Check) and not step.body.by)
    return (
        is_work
        and bool({*step.hazards} & {name for one in inner for name in one.hazards})
        and bool(_states(step) & {name for one in inner for name in _states(one)})
    )


def _states(step: Step) -> set[str]:
    return {str(need.condition) for need in step.needs} | {str(step.hook_up or "")} - {""}
