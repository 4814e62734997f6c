"""A step whose states can't be reached from what the step before it left: whatever is changed
first, something is in the way.

Why: The tech would have to break a rule of the shop, such as unplugging with the key on.

Wrong:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    key-on:
      group: power
      text: key on
      enter: Turn the key on
    engine-running:
      group: power
      text: engine running
      enter: Start the engine
    held:
      excludes: [key-off]
      text: held on
      enter: Hold it on
      undo: Let it go
      changed_with: [key-on]
    plugged:
      excludes: [key-on]
      text: the tester plugged in
      enter: Plug in the tester
      undo: Unplug the tester
      changed_with: [key-off]

    # trees/charging/case.yml
    steps:
      look:
        check: Is the light on?
        when: [held, plugged, engine-running]
        results: {yes: repair, no: all-good}

Right:

    # kb/conditions.yml
    key-off:
      group: power
      normal: yes
      text: key off
      enter: Turn the key off
    key-on:
      group: power
      text: key on
      enter: Turn the key on
    engine-running:
      group: power
      text: engine running
      enter: Start the engine
    held:
      excludes: [key-off]
      text: held on
      enter: Hold it on
      undo: Let it go
      changed_with: [key-on, engine-running]
    plugged:
      excludes: [key-on]
      text: the tester plugged in
      enter: Plug in the tester
      undo: Unplug the tester
      changed_with: [key-off]

    # trees/charging/case.yml
    steps:
      look:
        check: Is the light on?
        when: [held, plugged, engine-running]
        results: {yes: repair, no: all-good}

Fix: Make two steps of it, or correct `changed_with` and `excludes` in `kb/conditions.yml`.
"""

from collections.abc import Iterator

from builder.graph.possible_changes import first_impossible
from builder.graph.vehicle_states import at_odds
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.state_witness import path_in_words
from builder.rules.states_at_odds import written

RULE = Rule(
    name="impossible-state",
    family=Family.STATES,
    severity=Severity.ERROR,
    summary="A step needs what can't be reached from the step before it.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that can't be entered on one of its paths."""
    paths = facts.paths()
    if paths is None:
        return
    conditions = facts.conditions()
    told: set[str] = set()
    possible: set[tuple[object, ...]] = set()  # ways to enter a step that were tried already
    for place in paths.moves_from:
        entry = paths.entries[place]
        way = place.states, entry.needed, entry.step.hook_up, entry.step.kind
        if (
            place.calls
            or place.step in told
            or way in possible
            or any(True for _ in at_odds(conditions, entry.needed))
        ):
            continue
        bad = first_impossible(conditions, place.states, entry)
        if bad is None:
            possible.add(way)
        else:
            told.add(place.step)
            yield RULE.finding(
                entry.step.text.at,
                f"`{place.step}` can't get into {written(bad)}: {path_in_words(paths, place)}",
                "the tech would have to do something that your conditions rule out",
                "make two steps of it, or correct `changed_with` and `excludes` of the state",
            )
