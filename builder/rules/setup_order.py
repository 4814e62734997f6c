"""A module is initialized or paired after it was programmed, and not configured in between.

Only where the module's record says that it needs configuration.

Why: Without its configuration a module doesn't know what is installed in this vehicle: it learns
the wrong end stops, or refuses, and the work starts over.

Wrong:

    program:
      action: Program the steering module
      when: [battery support on]
      does: [check-supply, hold-supply, program steering-unit]
      then: initialize
    initialize:
      action: Initialize the steering module
      does: [initialize steering-unit]
      then: again
    again:
      check: Is it good now?
      results: {yes: all-good, no: repair}

Right:

    program:
      action: Program the steering module
      when: [battery support on]
      does: [check-supply, hold-supply, program steering-unit]
      then: configure
    configure:
      action: Configure the steering module
      does: [configure steering-unit]
      then: initialize
    initialize:
      action: Initialize the steering module
      does: [initialize steering-unit]
      then: again
    again:
      check: Is it good now?
      results: {yes: all-good, no: repair}

Fix: Lead the path to the step that configures it, and from there on.
"""

from collections.abc import Iterator

from builder.graph.deeds import all_deeds
from builder.graph.moves import Move
from builder.graph.precedence import reached_unmet
from builder.model.finding import Finding, Severity
from builder.model.tree import Deed, Step
from builder.rules.shared.order import path_as_text, reached_steps
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="setup-order",
    family=Family.SETUP,
    severity=Severity.ERROR,
    summary="A module is initialized before it is configured.",
)
LATER = ("initialize", "pair")  # what needs the configuration


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every setup that skips the configuration after programming."""
    deeds = [deed for step in facts.steps for deed in step.does]
    programmed = dict.fromkeys(str(one.module) for one in deeds if one.verb == "program")
    for name in programmed:
        module = facts.library.modules.get(name)
        needed = {one.verb for one in module.set_up if one.needed == "needed"} if module else set()
        if facts.whole and "configure" in needed:
            yield from _skipped(facts, name)


def _skipped(facts: Facts, module: str) -> Iterator[Finding]:
    steps = facts.tree.steps

    def configures(move: Move) -> bool:
        return _has(steps[move.source.step], "configure", module)

    programming = [move for move in facts.graph.moves
                   if _has(steps[move.source.step], "program", module)
                   and not configures(move)]  # fmt: skip
    reached = reached_unmet(facts.graph.moves_from, (), configures, programming)
    for step, place in reached_steps(reached, facts):
        for deed in _too_early(step, module):
            yield RULE.finding(
                deed.text.at,
                f"`{deed.text}` runs before `{module}` is configured: "
                f"{path_as_text(reached, place)}",
                "without its configuration the module doesn't know what this vehicle has, and the "
                "work starts over",
                _hint(facts, module),
            )


def _too_early(step: Step, module: str) -> Iterator[Deed]:
    if not _has(step, "configure", module):
        yield from (one for one in step.does if one.verb in LATER and one.module == module)


def _has(step: Step, verb: str, module: str) -> bool:
    return any(deed.verb == verb and deed.module in (None, module) for deed in all_deeds(step))


def _hint(facts: Facts, module: str) -> str:
    configuring = [step.id for step in facts.steps if _has(step, "configure", module)]
    if not configuring:
        return f"add a step between them with `does: [configure {module}]`"
    return f"lead the path to `{configuring[0]}` first"
