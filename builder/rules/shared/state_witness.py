"""A path with states of the vehicle, as a technician would point it out.

In: the `VehiclePaths` of a tree and a place. Out: text, and the step of the tree at which it shows.
"""

from builder.graph.moves import Place
from builder.graph.vehicle_paths import VehiclePaths
from builder.model.checks import Check
from builder.model.text import Text
from builder.model.tree import Step
from builder.rules.shared.rule import Facts


def path_in_words(paths: VehiclePaths, place: Place) -> str:
    """Write the shortest path to a place in the steps of the tree: `a -> b -> c`."""
    return names_in_words(list(paths.path_to(place)))


def paths_in_words(paths: VehiclePaths, *places: Place) -> tuple[str, ...]:
    """Write the shortest paths to some places; with the steps of procedures, if all else is one."""
    every = [list(paths.path_to(place)) for place in places]
    texts = tuple(map(names_in_words, every))
    if len(set(texts)) == len(texts):
        return texts
    return tuple(" -> ".join(place.step for place in path) for path in every)


def names_in_words(places: list[Place]) -> str:
    """Write places as `a -> b -> c`; the steps of a procedure as the step that runs it."""
    names: list[str] = []
    for place in places:
        name = place.calls[0].step if place.calls else place.step
        if not names or names[-1] != name:
            names.append(name)
    return " -> ".join(names)


def own_step(facts: Facts, place: Place) -> Step:
    """Return the step of the tree that a place belongs to."""
    return facts.tree.steps[place.calls[0].step if place.calls else place.step]


def shown_at(facts: Facts, place: Place) -> Text:
    """Return the author's words at which something in a place is pointed out."""
    step = own_step(facts, place)
    if place.calls and isinstance(step.body, Check) and step.body.by:
        return step.body.by
    return step.text
