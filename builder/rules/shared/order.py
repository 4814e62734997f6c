"""What must come first on every path of a tree, also across handoffs.

In: the `Facts` of a tree and a `Requirement`. Out: the places a walk can reach with the requirement
unmet. Anyone can open a tree that is found by its symptom, so nothing counts as done before it. A
tree without a symptom, or a step that only other trees lead to, starts with what all of them did.
"""

from collections.abc import Iterable, Iterator

from builder.graph.deeds import Effect, all_deeds, deeds_done, leaves_done
from builder.graph.moves import Move, Place
from builder.graph.precedence import MoveTest, ReachedUnmet, reached_unmet, with_effect
from builder.graph.requirements import Requirement
from builder.model.checks import Check
from builder.model.finding import Related
from builder.model.library import Library, entered_at, handoffs_to
from builder.model.summary import Handoff
from builder.model.tree import Deed, Step
from builder.rules.shared.rule import Facts

TreeEntry = tuple[str, str]  # a tree and the step at which a walk enters it


def unmet(facts: Facts, requirement: Requirement) -> ReachedUnmet:
    """Return where a walk can arrive with a requirement unmet."""
    graph, steps = facts.graph, facts.tree.steps
    starts = [place for place in graph.starts if not is_met_at_start(facts, place, requirement)]
    undoes = with_effect(steps, requirement, Effect.UNDONE)
    undoing = [move for move in graph.moves if undoes(move)]
    return _reached_unmet(facts, starts, with_effect(steps, requirement, Effect.MET), undoing)


def _reached_unmet(
    facts: Facts, starts: Iterable[Place], meets_it: MoveTest, undoing: Iterable[Move] = ()
) -> ReachedUnmet:
    """Follow the walks; a step with a text error may meet anything, so it counts as meeting it."""
    broken = facts.tree.broken

    def may_meet_it(move: Move) -> bool:
        return move.source.step in broken or meets_it(move)

    return reached_unmet(facts.graph.moves_from, starts, may_meet_it, undoing)


def without_step(facts: Facts, name: str) -> ReachedUnmet:
    """Return where a walk can arrive without having done a step of the tree."""
    step = facts.tree.steps[name]

    def does_step(move: Move) -> bool:
        return move.source.step == name and leaves_done(step, move.route.exit)

    return _reached_unmet(facts, facts.graph.starts, does_step)


def is_done_before(facts: Facts, target: Step, verb: str, module: str) -> bool:
    """Whether every path to a step has done something to a module."""
    steps = facts.tree.steps
    if not any(_names(deed, verb, module) for step in steps.values() for deed in all_deeds(step)):
        return False

    def does_it(move: Move) -> bool:
        done = deeds_done(steps[move.source.step], move.route.exit)
        return any(_names(deed, verb, module) for deed in done)

    reached = _reached_unmet(facts, facts.graph.starts, does_it).arrived_by
    return all(place.step != target.id for place in reached)


def _names(deed: Deed, verb: str, module: str) -> bool:
    return (deed.verb, deed.module) == (verb, module)


def reached_steps(reached: ReachedUnmet, facts: Facts) -> Iterator[tuple[Step, Place]]:
    """Yield each reached step without a text error, once, with one of its places."""
    places: dict[str, Place] = {}
    for place in reached.arrived_by:
        places.setdefault(place.step, place)
    for step in facts.steps:
        if step.id in places:
            yield step, places[step.id]


def deed_as_text(step: Step, deed: Deed) -> str:
    """Write a deed as a message quotes it, with the procedure that does it for the step."""
    by = step.body.by if isinstance(step.body, Check) else None
    return f"`{deed.text}` in `{by}`" if by else f"`{deed.text}`"


def path_as_text(reached: ReachedUnmet, place: Place) -> str:
    """Write the path on which the requirement is unmet: `a -> b -> c`."""
    return " -> ".join(reached.path_to(place))


def entering_handoffs(facts: Facts, reached: ReachedUnmet, place: Place) -> Iterator[Related]:
    """Point at the handoffs that begin the path, where other trees lead into the middle."""
    first = reached.path_to(place)[0]
    if first != facts.tree.start.id:
        for handoff in handoffs_to(facts.library, facts.tree.id):
            if handoff.step == first:
                yield Related(handoff.at, f"`{handoff.from_tree}` hands off to `{first}` here")


def is_met_at_start(facts: Facts, place: Place, requirement: Requirement) -> bool:
    """Whether it is met where a walk begins; for a procedure the steps that run it answer."""
    entry = facts.tree.id, place.step
    return facts.tree.is_procedure or _met_on_entry(facts.library, entry, requirement, frozenset())


def _met_on_entry(
    library: Library, entry: TreeEntry, requirement: Requirement, seen: frozenset[TreeEntry]
) -> bool:
    """Whether every handoff to an entry has met a requirement before; no handoff, then not."""
    tree, step = entry
    listing = library.listings.get(tree)
    if listing is None or entry in seen:
        return False
    start = listing.steps[0]
    if step == start and listing.searchable:
        return False
    every = handoffs_to(library, tree)
    handoffs = [handoff for handoff in every if (handoff.step or start) == step]
    return bool(handoffs) and all(
        _met_at_handoff(library, handoff, requirement, seen | {entry}) for handoff in handoffs
    )


def _met_at_handoff(
    library: Library, handoff: Handoff, requirement: Requirement, seen: frozenset[TreeEntry]
) -> bool:
    of_vehicle = handoff.without.get(requirement.name, handoff.reached_from)
    origins = handoff.without.get(requirement.key, of_vehicle)
    if any(name.startswith("!") for name in origins):
        return False
    entries = set(entered_at(library, handoff.from_tree)).intersection(origins)
    return all(
        _met_on_entry(library, (handoff.from_tree, step), requirement, seen) for step in entries
    )
