"""A load for which a spec has no row, or a spec by load in a step without one.

Why: 0.2 V is good at 2 A and bad at 9 A. Without the row of the load the limit is a guess.

Wrong:

    # kb/specs.yml
    power-drop: {text: drop, unit: V, from: 0, to: 16, good: {at 2 A: at most 0.2}, origin: x}
    # trees/charging/case.yml
    steps:
      feed:
        check: Measure voltage drop on the power side
        when: [loads-on]
        spec: power-drop
        results: {within spec: all-good, above spec: repair}

Right:

    # kb/specs.yml
    power-drop: {text: drop, unit: V, from: 0, to: 16, good: at most 0.2, origin: x}
    # trees/charging/case.yml
    steps:
      feed:
        check: Measure voltage drop on the power side
        when: [loads-on]
        spec: power-drop
        results: {within spec: all-good, above spec: repair}

Fix: Name a load that the spec has in `when`, such as `{loaded: 2 A}`, or add a row for it.
"""

import re
from collections import Counter
from collections.abc import Iterator

from builder.graph.spec_readings import load_of
from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.tree import Step, ValueKind
from builder.model.vehicle_data import Spec
from builder.rules.shared.procedure_steps import Running, steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="spec-load",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A load for which a spec has no limit.",
)
CURRENT = re.compile(r"[0-9.]+ m?A")
WHY = "the limit depends on the load: what is good at 2 A may be bad at 9 A"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every spec by load in a step whose load it doesn't have."""
    for running in steps_that_run(facts):
        yield from _handed_over(facts, running)
    for step in facts.steps:
        if not isinstance(step.body, Check):
            continue
        for reading in step.body.readings:
            spec = _spec_of(facts, str(reading.spec)) if reading.spec else None
            if spec and spec.good.by_load:
                yield from _of_load(facts, step, spec)


def _handed_over(facts: Facts, running: Running) -> Iterator[Finding]:
    """Yield a finding for a load that a step hands over, and none of the specs has a limit at."""
    asked = running.procedure.tree.asks
    loads = [running.check.with_.get(one.name) for one in asked if one.kind is ValueKind.CURRENT]
    named = {str(one.default) for one in asked if one.kind is ValueKind.SPEC and one.default}
    named |= {str(value) for value in running.check.with_.values()}
    specs = [facts.library.specs[name] for name in sorted(named) if name in facts.library.specs]
    for load in filter(None, loads):
        for spec in specs:
            if spec.good.by_load and CURRENT.fullmatch(load) and load not in spec.good.by_load:
                rows = " or ".join(f"`{row}`" for row in spec.good.by_load)
                yield RULE.finding(load.at, f"`{spec.id}` has no limit at `{load}`", WHY,
                                   f"use {rows}, or add `at {load}` in kb/specs.yml")  # fmt: skip
                return


def _spec_of(facts: Facts, name: str) -> Spec | None:
    """Return a spec; in a procedure that takes it, the one that is meant where none is given."""
    defaults = {f"<{one.name}>": str(one.default) for one in facts.tree.asks if one.default}
    return facts.library.specs.get(defaults.get(name, name))


def _of_load(facts: Facts, step: Step, spec: Spec) -> Iterator[Finding]:
    load, rows = load_of(step), ", ".join(f"`{row}`" for row in spec.good.by_load)
    need = next((need for need in step.needs if need.condition == "loaded"), None)
    if need is None or need.value is None:
        message = f"`{spec.id}` has its limits by load, and no load is named"
        others = [one for step in facts.steps for one in step.needs if one.condition == "loaded"]
        usual = Counter(str(one.value) for one in others if one.value).most_common(1)
        hint = f"add a load to `when`: `{{loaded: ...}}` with {rows}"
        if usual:
            hint = f"add `{{loaded: {usual[0][0]}}}` to `when`, as the other steps have it"
        yield RULE.finding(step.text.at, message, WHY, hint)
    elif not load.startswith("<") and load not in spec.good.by_load:
        hint = f"use {rows}, or add `at {load}` in kb/specs.yml"
        if not CURRENT.fullmatch(load):
            hint = f"a load is named by its current: use {rows}"
        yield RULE.finding(need.value.at, f"`{spec.id}` has no limit at `{load}`", WHY, hint)
