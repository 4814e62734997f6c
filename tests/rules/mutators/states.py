"""Ways to break the rules of conditions: slips in a sound `kb/conditions.yml`.

In: the sound conditions with their text. Out: mutants of them.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from itertools import combinations

from builder.model.conditions import Condition
from builder.model.text import Text

from .sound import Mutant, edited


@dataclass(frozen=True)
class SoundConditions:
    """Sound conditions with their text."""

    file: str
    conditions: tuple[Condition, ...]
    text: str

    def replaced(self, old: Text, new: str, *also: int) -> Mutant:
        """Write something else in the place of a text."""
        return Mutant(edited(self.text, old.at, new), frozenset({old.at.line, *also}))

    def without(self, one: Condition, key: str, *also: int) -> Mutant:
        """Take a word out of a condition; the finding is to stand on its first line."""
        lines = self.text.split("\n")
        first = one.id.at.line
        at = next(n for n in range(first, len(lines)) if lines[n].startswith(f"  {key}:"))
        end = at + 1
        while end < len(lines) and lines[end].startswith("    "):
            end += 1
        kept = [*lines[:at], *("" for _ in range(at, end)), *lines[end:]]
        return Mutant("\n".join(kept), frozenset({first, *also}))

    def with_line(self, one: Condition, line: str, *also: int) -> Mutant:
        """Write a word more under a condition, on the line of its id as a map in braces can't."""
        lines = self.text.split("\n")
        below = one.id.at.line
        text = "\n".join([*lines[:below], f"  {line}", *lines[below:]])
        return Mutant(text, frozenset({below, below + 1, *(n + 1 for n in also)}))


ConditionsMutator = Callable[[SoundConditions], Iterator[Mutant]]


def name_misspelled(sound: SoundConditions) -> Iterator[Mutant]:
    """Write a state or a group that isn't there."""
    for one in sound.conditions:
        names = (*one.excludes, *one.changed_with, *filter(None, (one.also_say,)))
        for name in names:
            yield sound.replaced(name, f"{name}zz")


def hazard_misspelled(sound: SoundConditions) -> Iterator[Mutant]:
    """Write a hazard that isn't there."""
    for one in sound.conditions:
        for hazard in one.hazards:
            yield sound.replaced(hazard, f"{hazard}zz")


def normal_lost_or_doubled(sound: SoundConditions) -> Iterator[Mutant]:
    """Make no state of a group normal, or two, or one without a group."""
    for one in sound.conditions:
        first = next(other for other in sound.conditions if other.group == one.group)
        if one.normal:
            yield sound.without(one, "normal", first.id.at.line)
        else:
            yield sound.with_line(one, "normal: yes")


def words_lost(sound: SoundConditions) -> Iterator[Mutant]:
    """Leave out how to enter or leave a state, or of which part it is."""
    for one in sound.conditions:
        if not one.normal:
            yield sound.without(one, "enter")
            yield sound.without(one, "text")
        if not one.group:
            yield sound.without(one, "undo")
        if one.takes and one.text:
            yield sound.replaced(one.text, one.text.replace(f"<{one.takes}>", "the part"))
        elif one.text:
            yield sound.replaced(one.text, f"{one.text} <part>")


def excluded_for_good(sound: SoundConditions) -> Iterator[Mutant]:
    """Exclude what a state can't do without: its own group, or when it is changed."""
    for one, other in combinations(sound.conditions, 2):
        if one.group and one.group == other.group and not other.excludes:
            yield sound.with_line(other, f"excludes: [{one.id}]")
    for one in sound.conditions:
        if one.excludes:
            name = one.excludes[0]
            yield sound.replaced(name, str(one.id))
            if one.changed_with:
                changed = {name.at.line for name in one.changed_with}
                yield sound.replaced(name, str(one.changed_with[0]), *changed)
        if one.changed_with:
            yield sound.replaced(one.changed_with[0], str(one.id))
