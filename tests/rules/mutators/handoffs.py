"""Mutators for the rules of handoffs from tree to tree.

In: a sound tree. Out: mutants of it, some with the finding in another tree.
"""

from collections.abc import Iterator
from dataclasses import replace

from builder.model.library import handoffs_to

from .sound import Mutant, Mutator, Sound


def handoff_to_nowhere(sound: Sound) -> Iterator[Mutant]:
    """Hand off to a tree that doesn't exist."""
    for _, exit_ in sound.exits:
        if exit_.branch.tree:
            yield sound.replaced(exit_.at, f"{exit_.branch.tree}-zz")


def led_to(status: str) -> Mutator:
    """Return a mutator that leads a branch to a tree of a status, or makes this tree one."""

    def led(sound: Sound) -> Iterator[Mutant]:
        trees = [tree for tree in sound.library.listings.values() if tree.status == status]
        for _, exit_ in sound.exits:
            for tree in trees if exit_.branch.step or exit_.branch.tree else ():
                yield sound.replaced(exit_.at, tree.id)
                yield sound.replaced(exit_.at, f"{tree.id}#{tree.steps[-1]}")
        leading = [
            (handoff.at.file, handoff.at.line)
            for handoff in handoffs_to(sound.library, sound.tree.id)
            if sound.library.listings[handoff.from_tree].status == "ready"
        ]
        if leading:
            yield from (_turned(sound, status, spot) for spot in leading)

    return led


def _turned(sound: Sound, status: str, spot: tuple[str, int]) -> Mutant:
    mutant = sound.with_status(status)
    return replace(mutant, lines=frozenset(), elsewhere=frozenset({spot}))


def handed_off_in_a_loop(sound: Sound) -> Iterator[Mutant]:
    """Hand off to the start of this tree, or of a tree that hands off to it."""
    leading = [one for one in handoffs_to(sound.library, sound.tree.id) if not one.step]
    reached = sound.reached()
    for step, exit_ in sound.exits:
        if step.id not in reached or not exit_.branch.step or exit_.branch.tree:
            continue
        yield sound.replaced(exit_.at, sound.tree.id)
        for caller in dict.fromkeys(handoff.from_tree for handoff in leading):
            elsewhere = frozenset(
                (handoff.at.file, handoff.at.line)
                for handoff in leading
                if handoff.from_tree == caller
            )
            yield replace(sound.replaced(exit_.at, caller), elsewhere=elsewhere)
