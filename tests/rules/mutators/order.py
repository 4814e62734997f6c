"""Mutators for the rules of order: what must come first, removed.

In: a sound tree. Out: mutants of it.
"""

from collections.abc import Iterator

from builder.model.knowledge import Signal
from builder.model.tree import Deed, Step

from .sound import Mutant, Mutator, Sound


def deed_removed(verb: str, *needing: str) -> Mutator:
    """Return a mutator that removes a deed from the only step that does it."""

    def removed(sound: Sound) -> Iterator[Mutant]:
        steps = sound.steps
        doing = [(step, deed) for step in steps for deed in step.does if deed.verb == verb]
        needs = {d.text.at.line for step in steps for d in step.does if d.verb in needing}
        if len(doing) == 1 and needs and not _is_entered(sound):
            yield _removed(sound, *doing[0], needs)

    return removed


def supply_left_out(sound: Sound) -> Iterator[Mutant]:
    """Remove the only test of the supply, or never connect the power supply."""
    writing = ("program", "configure", "initialize")
    yield from deed_removed("check-supply", *writing)(sound)
    lines = {one.text.at.line for step in sound.steps for one in step.does if one.verb in writing}
    without = sound.text.replace("battery-support", "in the bay")
    if lines and without != sound.text:
        yield Mutant(without, frozenset(lines))


def _removed(sound: Sound, step: Step, deed: Deed, lines: set[int]) -> Mutant:
    """Remove a deed from a step; where it is the only one, remove the list."""
    if len(step.does) == 1:
        return sound.without(deed.text.at, "does", *lines)
    return sound.replaced(deed.text.at, "cycle-key", *lines)


def _is_entered(sound: Sound) -> bool:
    """Whether other trees lead into the middle, so that what they did counts as well."""
    return any(step for _, step in sound.library.callers.get(sound.tree.id, ()))


def proof_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove the only ground test from a tree that replaces a module asking for it."""
    lines = {
        fix.replaces.module.at.line
        for _, fix in sound.fixes
        if fix.replaces and "ground" in sound.library.modules[fix.replaces.module].prove_first
    }
    doing = [
        (step, deed) for step in sound.steps for deed in step.does if deed.verb == "check-ground"
    ]
    if len(doing) == 1 and lines and not _is_entered(sound):
        yield _removed(sound, *doing[0], lines)


def caution_removed(sound: Sound) -> Iterator[Mutant]:
    """Remove a hazard from a step that brings it, where no other step or state names it."""
    states = {
        hazard
        for step in sound.steps
        for need in step.needs
        for hazard in sound.library.conditions[need.condition].hazards
    }
    for step in sound.steps:
        lines = _hazard_lines(sound, step)
        for hazard in step.hazards:
            others = [one.id for one in sound.steps if one is not step and hazard in one.hazards]
            if hazard in lines and hazard not in states and step.id in sound.reached(*others):
                if len(step.hazards) == 1:
                    yield sound.without(hazard.at, "hazards", *lines[hazard])
                else:
                    other = next(one for one in step.hazards if one != hazard)
                    yield sound.replaced(hazard.at, other, *lines[hazard])


def _hazard_lines(sound: Sound, step: Step) -> dict[str, list[int]]:
    """Return the hazards of a step's article and work, each with the lines that bring it."""
    lines: dict[str, list[int]] = {}
    library = sound.library
    article = library.how_tos.get(step.how_to) if step.how_to else None
    for hazard in article.hazards if article and step.how_to else ():
        if library.hazards[hazard].signal is Signal.DANGER:
            lines.setdefault(str(hazard), []).append(step.how_to.at.line)
    for deed in step.does:
        module = library.modules.get(deed.module) if deed.module else None
        for record in module.set_up if module else ():
            for hazard in record.hazards if record.verb == deed.verb else ():
                lines.setdefault(str(hazard), []).append(deed.text.at.line)
    return lines


def order_broken(sound: Sound) -> Iterator[Mutant]:
    """Name in `after` a step that a path doesn't lead through, or that doesn't exist."""
    for step in sound.steps:
        for after in step.after:
            yield sound.replaced(after.at, f"{after}zz")
    named = {step.id: step.text.at.end_line for step in sound.steps if not step.after}
    for first in sound.steps[1:]:
        later = [one for one in sound.reached(first.id) if one in named and one != first.id]
        if later:
            last = max(later, key=list(named).index)
            yield sound.inserted(named[last], f"    after: [{first.id}]")
