"""What must come first on every path of a tree, also across hand-overs.

In: the `Facts` of a tree and a `Requirement`. Out: the places to which a walk can come with the
requirement unmet. A tree that can be found by its symptom may be opened by anybody, so nothing is
taken to be done before it; a tree without one, or a step that only other trees lead to, has what
all of them have done.
"""

from collections.abc import Iterable, Iterator

from builder.graph.order import Brings, Lacking, brings, lacking, leaves_done, undoes
from builder.graph.paths import Move, Place
from builder.graph.requirements import Requirement
from builder.model.finding import Related
from builder.model.library import Library, entered_at, hand_overs_to
from builder.model.summary import HandOver
from builder.model.tree import Deed, Step
from builder.rules.shared.rule import Facts

Entry = tuple[str, str]  # a tree and the step at which it is entered


def unmet(facts: Facts, requirement: Requirement) -> Lacking:
    """Return where a walk can come with a requirement unmet."""
    graph, steps = facts.graph, facts.tree.steps
    starts = [
        place
        for place in graph.starts
        if not _met_on_entry(facts.library, (facts.tree.id, place.step), requirement, frozenset())
    ]
    undoing = [place for place in graph.onward if undoes(steps[place.step], requirement)]
    return _lacking(facts, starts, brings(steps, requirement), undoing)


def _lacking(
    facts: Facts, starts: Iterable[Place], brings: Brings, undoing: Iterable[Place] = ()
) -> Lacking:
    """Follow the walks; what a step with a mistake of text brings about is left open."""
    broken = facts.tree.broken

    def brought(move: Move) -> bool:
        return move.source.step in broken or brings(move)

    return lacking(facts.graph.onward, starts, brought, undoing)


def without_step(facts: Facts, name: str) -> Lacking:
    """Return where a walk can come without having done a step of the tree."""
    step = facts.tree.steps[name]

    def done(move: Move) -> bool:
        return move.source.step == name and leaves_done(step, move)

    return _lacking(facts, facts.graph.starts, done)


def without_caution(facts: Facts, hazard: str) -> Lacking:
    """Return where a walk can come without having met a step that names a hazard."""
    cautious = {name for name, step in facts.tree.steps.items() if hazard in step.hazards}
    return _lacking(facts, facts.graph.starts, lambda move: move.source.step in cautious)


def is_done_before(facts: Facts, target: Step, verb: str, module: str) -> bool:
    """Whether every path to a step has done something to a module."""
    doing = {
        name: step
        for name, step in facts.tree.steps.items()
        if any((deed.verb, deed.module) == (verb, module) for deed in step.does)
    }
    if not doing:
        return False

    def done(move: Move) -> bool:
        return move.source.step in doing and leaves_done(doing[move.source.step], move)

    came = _lacking(facts, facts.graph.starts, done).came
    return all(place.step != target.id for place in came)


def arrivals(found: Lacking, facts: Facts) -> Iterator[tuple[Step, Place]]:
    """Yield each sound step that is reached, once, with a place of it."""
    places: dict[str, Place] = {}
    for place in found.came:
        places.setdefault(place.step, place)
    for step in facts.steps:
        if step.id in places:
            yield step, places[step.id]


def unmet_deeds(step: Step, requirement: Requirement) -> Iterator[Deed]:
    """Yield what a step does without the requirement, which its own list may still meet in time."""
    so = False
    for deed in step.does:
        if deed.verb in requirement.needed_by and not so:
            yield deed
        if deed.verb in requirement.undone_by:
            so = False
        elif deed.verb == requirement.brought_by:
            so = True


def way_there(found: Lacking, place: Place) -> str:
    """Write the path on which it is missing."""
    return " -> ".join(found.trail(place))


def comes_from(facts: Facts, found: Lacking, place: Place) -> Iterator[Related]:
    """Point at the hand-overs by which the path begins, where other trees lead into the middle."""
    first = found.trail(place)[0]
    if first != facts.tree.start.id:
        for over in hand_overs_to(facts.library, facts.tree.id):
            if over.step == first:
                yield Related(over.at, f"`{over.from_tree}` hands over to `{first}` here")


def _met_on_entry(
    library: Library, entry: Entry, requirement: Requirement, seen: frozenset[Entry]
) -> bool:
    """Whether every way into an entry has met a requirement before; nobody knows, then not."""
    tree, step = entry
    listing = library.listings.get(tree)
    if listing is None or entry in seen:
        return False
    start = listing.steps[0]
    if step == start and listing.searchable:
        return False
    overs = [one for one in hand_overs_to(library, tree) if (one.step or start) == step]
    return bool(overs) and all(_brought(library, one, requirement, seen | {entry}) for one in overs)


def _brought(
    library: Library, over: HandOver, requirement: Requirement, seen: frozenset[Entry]
) -> bool:
    lacks = over.without.get(requirement.name, over.reached_from)
    if any(name.startswith("!") for name in lacks):
        return False
    entries = set(entered_at(library, over.from_tree)).intersection(lacks)
    return all(_met_on_entry(library, (over.from_tree, e), requirement, seen) for e in entries)
