"""The words by which a reading compares with its spec: the possible ones, and those missing.

In: a step that measures a spec. Out: the words, each with the good range that makes it possible.
"""

from builder.graph.spec_readings import good_of, load_of, words_for
from builder.model.checks import Check, Reading
from builder.model.figures import NOTHING_SHOWN
from builder.model.tree import Step
from builder.model.vehicle_data import Spec, Vehicle
from builder.rules.shared.rule import Facts
from builder.rules.shared.vehicles_of import vehicles_of
from builder.wording.value_text import scope_text


def possible_words(facts: Facts, step: Step, spec: Spec) -> dict[str, str]:
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


def words_without_result(facts: Facts, step: Step, reading: Reading) -> dict[str, str]:
    """Return the possible words that no result of the check has."""
    spec = facts.library.specs.get(str(reading.spec)) if reading.spec else None
    if spec is None or not isinstance(step.body, Check):
        return {}
    compared = [one.compares.get(reading.name) for one in step.body.results]
    written = {str(word) for word in compared if word and word != NOTHING_SHOWN}
    if len(compared) > sum(word is not None for word in compared):
        return {}  # a result that doesn't name the reading takes the rest
    possible = possible_words(facts, step, spec)
    return {word: good for word, good in possible.items() if word not in written}


def is_missing_word(facts: Facts, step: Step, result: str) -> bool:
    """Whether a result that the check lacks is one that it needs: `spec-result` asks for it."""
    readings = step.body.readings if isinstance(step.body, Check) else ()
    return any(result in words_without_result(facts, step, reading) for reading in readings)
