"""Mutators for the states that steps need.

In: a sound tree that names states. Out: mutants of it.
"""

from collections.abc import Iterator
from itertools import islice

from builder.model.tree import Need, Step

from .sound import Mutant, Sound

POWER = "power"


def _plain(sound: Sound) -> Iterator[tuple[Step, Need]]:
    """Yield the needs without a part or a current."""
    for step in sound.steps:
        yield from ((step, need) for need in step.needs if need.value is None)


def _group(sound: Sound, need: Need) -> str:
    return str(sound.library.conditions[need.condition].group)


def state_misspelled(sound: Sound) -> Iterator[Mutant]:
    """Write a state that isn't there, with a part or without."""
    for step in sound.steps:
        for need in step.needs:
            yield sound.replaced(need.condition.at, f"{need.condition}zz")
        if step.hook_up:
            yield sound.replaced(step.hook_up.at, f"{step.hook_up}zz")


def written_with_blanks(sound: Sound) -> Iterator[Mutant]:
    """Write a state in words."""
    for _, need in _plain(sound):
        words = need.condition.replace("-", " ")
        if " " in words:
            yield sound.replaced(need.condition.at, words)


def value_given(sound: Sound) -> Iterator[Mutant]:
    """Write a part behind a state that takes none."""
    for _, need in _plain(sound):
        yield sound.replaced(need.condition.at, f"{{{need.condition}: pcm}}")


def another_of_its_group(sound: Sound) -> Iterator[Mutant]:
    """Write two states of one group."""
    for _, need in _plain(sound):
        others = (
            name
            for name, one in sound.library.conditions.items()
            if one.group == _group(sound, need) and name != need.condition
        )
        for other in islice(others, 1):
            yield sound.replaced(need.condition.at, f"{need.condition}, {other}")


def power_left_out(sound: Sound) -> Iterator[Mutant]:
    """Leave out the power state beside one that asks for it."""
    conditions = sound.library.conditions
    for step, need in _plain(sound):
        asking = [one for one in step.needs if conditions[one.condition].also_say == POWER]
        if asking and _group(sound, need) == POWER:
            lines = (one.condition.at.line for one in asking)
            yield sound.replaced(need.condition.at, "in the bay", *lines)


def hooked_up_in_use(sound: Sound) -> Iterator[Mutant]:
    """Hook up in the state in which the reading is taken, or in none of power."""
    for step, need in _plain(sound):
        if step.hook_up and _group(sound, need) == POWER:
            yield sound.replaced(step.hook_up.at, str(need.condition))
            yield sound.replaced(step.hook_up.at, "raised")


def deed_of_a_state(sound: Sound) -> Iterator[Mutant]:
    """Write what a state counts as."""
    for step in sound.steps:
        for deed in step.does:
            for verb in ("hold-supply", "disconnect-battery", "drive"):
                yield sound.replaced(deed.text.at, verb)
