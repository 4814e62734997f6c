"""Mutators for the states that steps need.

In: a sound tree that names states. Out: mutants of it.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from builder.graph.moves import Place
from builder.graph.needed_states import state_of
from builder.graph.routes import ExitKind
from builder.graph.tree_paths import paths_of
from builder.graph.vehicle_states import States, normal_state, place_of
from builder.model.checks import Check
from builder.model.conditions import Conditions, VehicleState
from builder.model.ends import Fix
from builder.model.text import Text
from builder.model.tree import Need, Step
from builder.rules.undecided_state import is_hands_on

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


def state_not_decided(sound: Sound) -> Iterator[Mutant]:
    """Leave out a state of work that is reached in two of that group, without the work itself."""
    paths = paths_of(sound.tree, sound.library, ())
    assert paths
    conditions = sound.library.conditions
    for step in filter(is_hands_on, sound.steps):
        places = [one for one in paths.moves_from if one.step == step.id and not one.calls]
        fresh = [one for one in places if step.id not in map(_step, paths.path_to(one)[:-1])]
        for need in step.needs:
            state = state_of(conditions, need, step.where)
            others = [conditions[one.condition] for one in step.needs if one is not need]
            there = {_there(conditions, place.states, state) for place in fresh if state}
            if len(there) > 1 and not any(one.changed_with or one.excludes for one in others):
                yield _without(sound, step, need)


def _step(place: Place) -> str:
    return place.step


def _there(conditions: Conditions, now: States, state: VehicleState) -> object:
    """Return what tells apart what holds there; not of the key or a part, its meaning does."""
    group = place_of(conditions, state)
    holding = (one for one in now if place_of(conditions, one) == group)
    one = next(holding, normal_state(conditions, state) or state)
    if group[1] == POWER or state.part:
        return one
    return conditions[one.condition].counts_as, frozenset(conditions[one.condition].hazards)


def _without(sound: Sound, step: Step, need: Need) -> Mutant:
    written = f"{{{need.condition}: {need.value}}}" if need.value else str(need.condition)
    lines = sound.text.split("\n")
    line = need.condition.at.line
    lines[line - 1] = lines[line - 1].replace(written, "in the bay", 1)
    return Mutant("\n".join(lines), frozenset({line, step.text.at.line}))


def left_unplugged(sound: Sound) -> Iterator[Mutant]:
    """Unplug one of twelve parts after another, as often as it takes, and plug none in."""
    fix = next(str(step.id) for step in sound.steps if isinstance(step.body, Fix))
    parts = [*enumerate([*sound.library.parts, *sound.library.modules][:12])]
    results = ", ".join(f"{{result: plug {n}, branch: zz-{n}}}" for n, _ in parts)
    hub = ["zz-hub:", "  check: Which part is next?", "  at_most: 12", f"  spent: {fix}",
           f"  results: [{results}, {{result: none of them, branch: {fix}}}]"]  # fmt: skip
    pulls = [
        f"zz-{n}: {{action: Pull it, when: [key-off, {{unplugged: {part}}}], then: zz-hub}}"
        for n, part in parts
    ]
    more = "\n".join(f"  {line}" for line in (*hub, *pulls))
    start = sound.tree.start.text.at.line
    for branch in islice(_branches(sound), 1):  # such a tree takes seconds to judge
        mutant = sound.replaced(branch.at, "zz-hub", start)
        yield Mutant(f"{mutant.text.rstrip()}\n{more}\n", mutant.lines)


def _branches(sound: Sound) -> Iterator[Text]:
    for step, exit_ in sound.exits:
        is_result = exit_.kind is ExitKind.RESULT and isinstance(step.body, Check)
        if is_result and exit_.branch.step in sound.tree.steps:
            yield exit_.branch.text


def never_changed(sound: Sound) -> Iterator[tuple[Sound, Mutant]]:
    """Exclude in the conditions the only power state in which a state may be changed."""
    conditions = sound.library.conditions
    for name in dict.fromkeys(str(need.condition) for step in sound.steps for need in step.needs):
        one = conditions[name]
        if not one.changed_with or one.normal:
            continue
        key = one.changed_with[0]
        other = replace(one, changed_with=(key,), excludes=(*one.excludes, key))
        library = replace(sound.library, conditions={**conditions, name: other})
        needs = ((step, {one.condition for one in step.needs}) for step in sound.steps)
        needing = [step for step, named in needs if name in named and key not in named]
        if needing:  # where the key is named too, the two are at odds
            lines = frozenset(step.text.at.line for step in needing)
            yield Sound(sound.tree, sound.text, library), Mutant(sound.text, lines)
