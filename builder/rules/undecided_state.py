"""A check with tools, hazards or `do` lines that can be reached in two states of a group and names
neither. Only states that make a difference count: of the key, of a part, with other cautions or
another meaning to the limits.

Why: On one path the tech reaches in with the engine running, on the other with the key off. The
reading isn't the same, and neither is the danger.

Wrong:

    steps:
      light:
        check: Is the light on with the engine running?
        when: [engine-running]
        results: {yes: battery, no: codes}
      codes:
        check: Are there codes?
        when: [key-on]
        results: {yes: repair, no: battery}
      battery:
        check: Is the belt tight?
        do: [Press it with your thumb]
        results: {yes: all-good, no: repair}

Right:

    steps:
      light:
        check: Is the light on with the engine running?
        when: [engine-running]
        results: {yes: battery, no: codes}
      codes:
        check: Are there codes?
        when: [key-on]
        results: {yes: repair, no: battery}
      battery:
        check: Is the belt tight?
        when: [key-off]
        do: [Press it with your thumb]
        results: {yes: all-good, no: repair}

Fix: Name the state in `when`. A procedure is reached in every power state, so its first checks name
one.
"""

from collections import defaultdict
from collections.abc import Iterator
from itertools import combinations

from builder.graph.moves import Place
from builder.graph.vehicle_paths import VehiclePaths
from builder.graph.vehicle_states import States, normal_state, place_of
from builder.model.checks import Check
from builder.model.conditions import POWER, Conditions, VehicleState
from builder.model.finding import Finding, Severity
from builder.model.tree import Step
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.state_witness import paths_in_words
from builder.rules.states_at_odds import written

RULE = Rule(
    name="undecided-state",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="Hands-on work that can be reached in two states and names neither.",
)
Group = tuple[str, str, str]  # the place of a group, at a part
Pair = tuple[tuple[VehicleState, Place], tuple[VehicleState, Place]]  # each with where it holds


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every such check and group, where it begins.

    What only comes behind a check with the same finding is left out until that one is put right.
    """
    paths = facts.paths()
    if paths is None:
        return
    conditions = facts.conditions()
    hands_on = {step.id for step in facts.steps if is_hands_on(step)}
    reached: dict[str, list[Place]] = defaultdict(list)
    for place in paths.moves_from:
        if not place.calls and place.step in hands_on:
            reached[place.step].append(place)
    undecided: dict[Group, set[str]] = defaultdict(set)
    for name, places in reached.items():
        for group, pair in _undecided(conditions, paths, places):
            passed = {one.step for _, place in pair for one in paths.path_to(place)[:-1]}
            if not undecided[group] & passed:
                yield _finding(paths, facts.tree.steps[name], pair)
            undecided[group].add(name)


def is_hands_on(step: Step) -> bool:
    """Whether a check is done with hands in the vehicle."""
    return isinstance(step.body, Check) and bool(step.tools or step.hazards or step.do)


def _undecided(
    conditions: Conditions, paths: VehiclePaths, places: list[Place]
) -> Iterator[tuple[Group, Pair]]:
    """Compare what holds once a step is entered, on every path to it."""
    groups: dict[Group, VehicleState] = {}
    for place in places:
        for state in paths.entries[place].states:
            if conditions[state.condition].group:
                groups.setdefault(place_of(conditions, state), state)
    for group, example in groups.items():
        by_state: dict[VehicleState, Place] = {}
        for place in places:
            state = _state_in(conditions, paths.entries[place].states, group, example)
            by_state.setdefault(state, place)
        two = (pair for pair in combinations(by_state.items(), 2) if _differ(conditions, pair))
        if pair := next(two, None):
            yield group, pair


def _finding(paths: VehiclePaths, step: Step, pair: Pair) -> Finding:
    (one, first), (other, second) = pair
    return RULE.finding(
        step.text.at,
        f"`{step.id}` can be reached in {written(one)} and in {written(other)}: "
        f"{'; '.join(paths_in_words(paths, first, second))}",
        "neither the reading nor the danger is the same",
        f"name one of them in `when` of `{step.id}`",
    )


def _differ(conditions: Conditions, pair: Pair) -> bool:
    (one, _), (other, _) = pair
    first, second = conditions[one.condition], conditions[other.condition]
    if first.group == POWER or one.part:
        return True
    return first.counts_as != second.counts_as or set(first.hazards) != set(second.hazards)


def _state_in(
    conditions: Conditions, states: States, group: Group, example: VehicleState
) -> VehicleState:
    """Return the state of a group that holds: one of those entered, or else the normal one."""
    holding = (state for state in states if place_of(conditions, state) == group)
    normal = normal_state(conditions, example)
    return next(holding, normal or example)
