"""Ways to break the rules of hand-overs from tree to tree.

In: a sound tree. Out: mutants of it, some of which are told in another tree.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.graph.routes import exits
from builder.model.library import hand_overs_to

from .sound import Mutant, Mutator, Sound


def hand_over_to_nothing(sound: Sound) -> Iterator[Mutant]:
    """Hand over to a tree that is not there."""
    for step in sound.steps:
        for way in exits(step):
            if way.branch.tree:
                yield sound.replaced(way.at, f"{way.branch.tree}-zz")


def led_to(status: str) -> Mutator:
    """Return a mutator that leads a branch to a tree of a status, or makes this tree one."""

    def led(sound: Sound) -> Iterator[Mutant]:
        trees = [one for one in sound.library.listings.values() if one.status == status]
        for _, way in sound.ways:
            for there in trees if way.branch.step or way.branch.tree else ():
                yield sound.replaced(way.at, there.id)
                yield sound.replaced(way.at, f"{there.id}#{there.steps[-1]}")
        leading = [
            (over.at.file, over.at.line)
            for over in hand_overs_to(sound.library, sound.tree.id)
            if sound.library.listings[over.from_tree].status == "ready"
        ]
        if leading:
            yield from (_turned(sound, status, spot) for spot in leading)

    return led


def _turned(sound: Sound, status: str, spot: tuple[str, int]) -> Mutant:
    mutant = sound.with_status(status)
    return replace(mutant, lines=frozenset(), elsewhere=frozenset({spot}))


def handed_round(sound: Sound) -> Iterator[Mutant]:
    """Hand over to the beginning of this tree, or of a tree that hands over to it."""
    leading = [over for over in hand_overs_to(sound.library, sound.tree.id) if not over.step]
    reached = sound.reached()
    for step, way in sound.ways:
        if step.id not in reached or not way.branch.step or way.branch.tree:
            continue
        yield sound.replaced(way.at, sound.tree.id)
        for caller in dict.fromkeys(over.from_tree for over in leading):
            there = frozenset(
                (over.at.file, over.at.line) for over in leading if over.from_tree == caller
            )
            yield replace(sound.replaced(way.at, caller), elsewhere=there)
