"""A spec without a limit on one side, though the vehicles have it and checks have a branch for it.

Why: On a vehicle without a value of its own, 16 V passes as a good charging voltage.

Wrong:

    # kb/specs.yml
    volts: {text: voltage, unit: V, from: 0, to: 20, good: at least 13.2, origin: common practice}
    # kb/vehicles/tern.yml
    make: Corvane
    model: Tern
    years: 2017-2022
    specs:
      volts: {good: 13.4 to 14.9, source: service information}
    # kb/vehicles/moor.yml
    make: Brindal
    model: Moor
    years: 2012-2024
    specs:
      volts: {good: 13.2 to 15.0, source: service information}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure voltage at the battery posts
        when: [engine at idle]
        spec: volts
        results: {within spec: all-good, below spec: repair, above spec: repair}

Right:

    # kb/specs.yml
    volts: {text: voltage, unit: V, from: 0, to: 20, good: 13.2 to 14.8, origin: common practice}
    # kb/vehicles/tern.yml
    make: Corvane
    model: Tern
    years: 2017-2022
    specs:
      volts: {good: 13.4 to 14.9, source: service information}
    # kb/vehicles/moor.yml
    make: Brindal
    model: Moor
    years: 2012-2024
    specs:
      volts: {good: 13.2 to 15.0, source: service information}
    # trees/charging/case.yml
    steps:
      running:
        check: Measure voltage at the battery posts
        when: [engine at idle]
        spec: volts
        results: {within spec: all-good, below spec: repair, above spec: repair}

Fix: Write both limits, as the vehicles have them.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.spec_readings import words_for
from builder.graph.vehicle_lookups import spec_results
from builder.model.finding import Finding, Related, Severity
from builder.model.library import Library
from builder.model.vehicle_data import Spec, Vehicle
from builder.rules.shared.rule import Family, Rule
from builder.rules.shared.spec_units import is_out_of_reach
from builder.wording.value_text import scope_text

RULE = Rule(
    name="lost-limit",
    family=Family.READINGS,
    severity=Severity.WARNING,
    summary="A spec without a limit that vehicles have and checks rely on.",
)
FEWEST = 2  # vehicles with the limit; one alone may be the odd one
SIDES = {"below spec": "lower", "above spec": "upper"}


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every spec that lacks a limit that its vehicles and checks have."""
    for spec in library.specs.values():
        own = [one for one in library.vehicles.values() if spec.id in one.specs]
        for word in SIDES if _is_limit(spec) and len(own) >= FEWEST else ():
            is_lost = word not in words_for(spec) and all(word in words_for(spec, v) for v in own)
            if is_lost and (place := _branches_on(library, spec, word)):
                yield _finding(spec, word, own[0], place)


def _is_limit(spec: Spec) -> bool:
    """Whether there is a range that can be read; else `vehicle-value` says so."""
    return spec.good.range is not None and not is_out_of_reach(spec, spec.good.range)


def _branches_on(library: Library, spec: Spec, word: str) -> str:
    """Return a tree or a procedure with a branch for a result of a spec, or nothing."""
    wanted = str(spec.id), word
    for procedure in library.procedures.values():
        if wanted in spec_results(procedure.tree):
            return procedure.name
    trees = (name for name, tree in library.trees.items() if wanted in tree.spec_results)
    return next(trees, "")


def _finding(spec: Spec, word: str, vehicle: Vehicle, place: str) -> Finding:
    good, side = vehicle.specs[spec.id].good.text, SIDES[word]
    name = scope_text(vehicle.scope)
    return RULE.finding(
        spec.good.text.at,
        f"`{spec.good.text}` has no {side} limit, but `{place}` has a branch for `{word}`",
        f"on a vehicle without its own value, nothing is ever {word.split()[0]} `{spec.id}`",
        f"write both limits in `good`, like the {name}: `{good}`",
        Related(good.at, f"good on the {name}"),
    )
