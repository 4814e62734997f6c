"""A result that a reading can have by its spec and that has no branch, or one that it can't have.

The good range says which results are possible: `at most 0.5` has nothing below it. It is proved for
the spec itself and for every vehicle that the tree covers. `none`, for nothing shown, is never
needed.

Why: A tech who gets that result is stuck.

Wrong:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: ripple
        results: {within spec: all-good, below spec: repair}

Right:

    # kb/specs.yml
    ripple: {text: AC ripple, unit: V, from: 0, to: 5, good: at most 0.5, origin: common practice}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure AC voltage at the battery posts
        when: [engine at idle]
        spec: ripple
        results: {within spec: all-good, above spec: repair}

Fix: Give each possible result a branch, and delete those that can't happen.
"""

from collections.abc import Iterator

from builder.graph.spec_readings import good_of, load_of, words_for
from builder.model.checks import Check, Reading
from builder.model.figures import NOTHING_SHOWN
from builder.model.finding import Finding, Related, Severity
from builder.model.tree import Step
from builder.model.vehicle_data import Spec, Vehicle
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.vehicles_of import vehicles_of
from builder.wording.value_text import scope_text

RULE = Rule(
    name="spec-result",
    family=Family.READINGS,
    severity=Severity.ERROR,
    summary="A result of a spec that has no branch, or that can't happen.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every result that is missing or impossible, for any vehicle or one."""
    for step in facts.steps:
        if isinstance(step.body, Check):
            for reading in step.body.readings:
                spec = facts.library.specs.get(str(reading.spec)) if reading.spec else None
                if spec:
                    yield from _of_reading(facts, step, reading, spec)


def _of_reading(facts: Facts, step: Step, reading: Reading, spec: Spec) -> Iterator[Finding]:
    assert isinstance(step.body, Check)
    compared = [one.compares.get(reading.name) for one in step.body.results]
    written = {str(word): word for word in compared if word and word != NOTHING_SHOWN}
    rest_covered = len(compared) > sum(word is not None for word in compared)
    possible = _possible(facts, step, spec)
    for word, good in possible.items():
        if word not in written and not rest_covered:
            yield RULE.finding(
                step.text.at, f"no result covers `{word}` ({good})",
                "a tech who gets that reading is stuck", f"add `{word}` and its branch",
            )  # fmt: skip
    for word, text in written.items():
        if word not in possible:
            yield RULE.finding(
                text.at, f"a reading can't be `{word}`: good is {spec.good.text}",
                "a branch that can't be taken hides a mistake",
                f"give `{spec.id}` that limit in kb/specs.yml, or delete this result",
                Related(spec.good.text.at, "the limits"),
            )  # fmt: skip


def _possible(facts: Facts, step: Step, spec: Spec) -> dict[str, str]:
    """Return the possible results, each with the good range and the vehicle that has it."""
    covered = vehicles_of(facts.tree.applies_to, facts.library.vehicles)
    own = (vehicle for vehicle in covered if spec.id in vehicle.specs)
    vehicles: tuple[Vehicle | None, ...] = (None, *own)
    load = load_of(step)
    possible: dict[str, str] = {}
    for vehicle in vehicles:
        good = str(good_of(spec, vehicle, load).text)
        where = (
            f"good is {good} on the {scope_text(vehicle.scope)}" if vehicle else f"good is {good}"
        )
        for word in words_for(spec, vehicle, load):
            possible.setdefault(word, where)
    return possible
