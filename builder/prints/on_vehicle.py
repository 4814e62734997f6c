"""A tree as it is on one vehicle: its values instead of `within spec`, its pins, fuses and torques.

In: a tree whose specs are filled in for the vehicle, the library, the vehicle. Out: the same tree
with the vehicle's data in its words, so that every sheet shows them. What the vehicle's file
doesn't have stays as it was.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.graph.space import range_as_text
from builder.graph.spec_readings import with_specs
from builder.model.checks import Check, Reading, Result
from builder.model.ends import Fix, Verification
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Step, Tree
from builder.model.vehicle_data import Vehicle
from builder.prints.pins_on_vehicle import where_on_vehicle
from builder.wording.results import result_words
from builder.wording.value_text import scope_text, torque_text


def tree_on_vehicle(tree: Tree, library: Library, vehicle: Vehicle) -> Tree:
    """Return a tree with what the vehicle's file has; its title names the vehicle."""
    steps = {name: _on_vehicle(step, library, vehicle) for name, step in tree.steps.items()}
    proved = {name: _verified(step, tree, steps) for name, step in steps.items()}
    title = Text(f"{tree.title}: {scope_text(vehicle.scope)}", tree.title.at)
    return replace(tree, title=title, applies_to=(vehicle.scope,), steps=proved)


def library_on_vehicle(library: Library, vehicle: Vehicle) -> Library:
    """Return the library with its procedures as they are on the vehicle."""
    procedures = {}
    for name, one in library.procedures.items():
        tree = with_specs(one.tree, library.specs, vehicle)
        on_it = tree_on_vehicle(tree, library, vehicle)
        procedures[name] = replace(one, tree=replace(on_it, title=tree.title))
    return replace(library, procedures=procedures)


def _on_vehicle(step: Step, library: Library, vehicle: Vehicle) -> Step:
    step = replace(step, where=where_on_vehicle(step, library, vehicle))
    if isinstance(step.body, Fix):
        return replace(step, do=(*step.do, *_torque_lines(step.body, library, vehicle)))
    return replace(step, body=_with_values(step.body)) if isinstance(step.body, Check) else step


def _torque_lines(fix: Fix, library: Library, vehicle: Vehicle) -> Iterator[Text]:
    module = library.modules.get(str(fix.replaces.module)) if fix.replaces else None
    fit = module.fit.torques if module and module.fit else ()
    for name in dict.fromkeys((*fix.torques, *fit)):
        if torque := vehicle.torques.get(str(name)):
            words = f"Torque {name.replace('-', ' ')} to {torque_text(torque.newton_meters)}"
            yield Text(f"{words}. {torque.note}" if torque.note else words, name.at)


def _with_values(check: Check) -> Check:
    """Return a check whose results name the limits of its specs, as far as they are known."""
    known = {one.name for one in check.readings if one.spec and not one.one_of}
    if not known:
        return check
    readings = tuple(_without_spec(one) if one.name in known else one for one in check.readings)
    results = tuple(_with_limits(result, known) for result in check.results)
    return replace(check, readings=readings, results=results)


def _without_spec(reading: Reading) -> Reading:
    """Return a reading that is filled in for good: no other vehicle's value takes its place."""
    return replace(reading, spec=None)


def _with_limits(result: Result, known: set[str]) -> Result:
    """Return a result with its limits in the place of `within spec`."""
    text, left = str(result.text), dict(result.compares)
    for name, word in result.compares.items():
        if name in known and name in result.ranges:
            limits = range_as_text(result.ranges[name])
            text = text.replace(f"{name}: {word}", f"{name}: {limits}") if name else limits
            del left[name]
    return replace(result, text=Text(text, result.text.at), compares=left)


def _verified(step: Step, tree: Tree, on_vehicle: dict[str, Step]) -> Step:
    """Return a fix whose tests name the same limits as the checks that they repeat."""
    if not isinstance(step.body, Fix):
        return step
    verify = tuple(_test(one, tree, on_vehicle) for one in step.body.verify)
    return replace(step, body=replace(step.body, verify=verify))


def _test(one: Verification, tree: Tree, on_vehicle: dict[str, Step]) -> Verification:
    named = tree.steps.get(str(one.text))
    if named is None or not isinstance(named.body, Check) or not one.passes:
        return one
    check = on_vehicle[str(one.text)].body
    assert isinstance(check, Check)
    results = zip(named.body.results, check.results, strict=True)
    words = {before.text: result_words(check, after) for before, after in results}
    return replace(one, passes=tuple(Text(words.get(it, it), it.at) for it in one.passes))
