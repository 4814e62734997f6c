"""Mutators for the rules of knowledge: unknown names, repeated complaints, unused articles.

In: a sound tree. Out: mutants of it, some with the finding in another file.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import pairwise

from builder.model.summary import TreeSummary
from builder.model.text import Text
from builder.model.tree import Step

from .sound import Mutant, Mutator, Sound


def misspelled(name_of: Callable[[Step], Text | None]) -> Mutator:
    """Return a mutator that misspells a name of a step."""

    def written(sound: Sound) -> Iterator[Mutant]:
        for step in sound.steps:
            name = name_of(step)
            if name:
                yield sound.replaced(name.at, f"{name}zz")

    return written


def lamp_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a warning light that doesn't exist."""
    for lamp in sound.tree.symptom.lamps:
        yield sound.replaced(lamp.at, f"{lamp}zz")


def look_alike(sound: Sound) -> Iterator[Mutant]:
    """Write the letter O for the digit 0 in a DTC."""
    for code in sound.tree.symptom.codes:
        if "0" in code:
            yield sound.replaced(code.at, code.replace("0", "O", 1))


def module_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a module that has no record."""
    for module in sound.tree.symptom.fitted_elsewhere:
        yield sound.replaced(module.at, f"{module}zz")
    for step in sound.steps:
        for deed in step.does:
            if deed.module:
                yield sound.replaced(deed.text.at, f"{deed.text}zz")
    for _, fix in sound.fixes:
        if fix.replaces:
            yield sound.replaced(fix.replaces.module.at, f"{fix.replaces.module}zz")


def system_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a system that doesn't exist."""
    yield sound.replaced(sound.tree.system.at, f"{sound.tree.system}zz")


def vehicle_unknown(sound: Sound) -> Iterator[Mutant]:
    """Write a model the shop doesn't know, or years in which it wasn't made."""
    for scope in sound.tree.applies_to:
        yield sound.replaced(scope.model.at, f"{scope.model}zz")
        if scope.years:
            first, last = map(str, scope.years)
            line = sound.text.split("\n")[scope.at.line - 1]
            column = line.index(f"{first}-{last}") + 1
            at = scope.at._replace(
                end_line=scope.at.line, column=column, end_column=column + len(f"{first}-{last}")
            )
            yield sound.replaced(at, f"{first}-{scope.years[1] + 1}")
            yield sound.replaced(at, f"{scope.years[0] - 1}-{last}")


def picture_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Name a picture that doesn't exist."""
    for step in sound.steps:
        if step.picture:
            yield sound.replaced(step.picture.file.at, f"zz-{step.picture.file}")


def complaint_copied(sound: Sound) -> Iterator[Mutant]:
    """Copy a complaint of another tree, or repeat one of this tree."""
    words = sound.tree.symptom.words
    for one, other in pairwise(words):
        yield sound.replaced(other.at, f'"{one.upper()}"', one.at.line)
    others = [
        tree
        for tree in sound.library.trees.values()
        if tree.id != sound.tree.id and tree.status != "retired" and _same_vehicles(sound, tree)
    ]
    for number, tree in enumerate(others if words else ()):
        one, copied = words[number % len(words)], tree.symptom.words[0]
        mutant = sound.replaced(one.at, f'"{copied}"')
        yield replace(mutant, elsewhere=frozenset({(tree.file, copied.at.line)}))


def _same_vehicles(sound: Sound, other: TreeSummary) -> bool:
    own, others = (
        {(scope.make, scope.model) for scope in tree.applies_to} for tree in (sound.tree, other)
    )
    return not own or not others or bool(own & others)


def article_dropped(sound: Sound) -> Iterator[Mutant]:
    """Remove the last links to an article."""
    library = sound.library
    others = [
        listing.how_tos for listing in library.listings.values() if listing.id != sound.tree.id
    ]
    linked = "\n".join(one.body for one in library.how_tos.values())
    for name in library.listings[sound.tree.id].how_tos:
        if not any(name in used for used in others) and f"({name}.md" not in linked:
            mutant = sound
            for step in sound.steps:
                if step.how_to == name:
                    mutant = mutant.again(mutant.without(step.how_to.at, "how_to"))
            at = library.how_tos[name].at
            yield Mutant(mutant.text, frozenset(), frozenset({(at.file, at.line)}))
