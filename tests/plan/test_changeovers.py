"""What the changes of the vehicle take is counted with the steps they are made for."""

from dataclasses import replace
from pathlib import Path

import pytest

from builder.check.filled_knowledge import filled_knowledge
from builder.model.library import Library
from builder.plan.changeovers import with_changeovers
from builder.plan.minutes import tree_minutes
from builder.reader.source import Source
from builder.reader.trees import tree_from

SHOP = Path(__file__).parents[1] / "shop"
TREE = """\
title: Pump does not run
symptom: [no pump]
steps:
  pump:
    check: Is the pump dry?
    when: [engine-running]
    minutes: 3
    results: {yes: wire, no: ask}
  wire:
    check: Is the wire good?
    when: [battery-disconnected, {unplugged: pump}]
    minutes: 4
    results: {yes: pump-fix, no: open}
  pump-fix:
    fix: Replace the pump
    cause: It is worn
    when: [raised, key-off]
    weight: 1
    verify: [it runs]
  ask: {stop: Ask the foreman}
  open: {stop: Repair the wire first}
"""


@pytest.fixture(scope="module")
def library() -> Library:
    """Return the knowledge of the tests' shop."""
    return filled_knowledge(SHOP)[0]


def test_each_step_is_charged_with_what_is_changed_for_it(library: Library) -> None:
    """Starting the engine takes 1 min, the battery 5 and 5 of waiting, the connector 2.

    At an end the connector takes 1 and the battery 5 again, or the key 1. What the fix needs
    itself, here the lift, is part of its hours.
    """
    tree, _ = tree_from(Source("trees/fuel/pump.yml", TREE, ""))
    assert tree
    steps = with_changeovers(tree, library).steps
    taken = {name: step.changeover and step.changeover.minutes for name, step in steps.items()}
    assert taken == {"pump": 1, "wire": 7, "pump-fix": 6, "ask": 1, "open": 6}
    waits = {name: step.changeover and step.changeover.wait for name, step in steps.items()}
    assert waits == {"pump": 0, "wire": 5, "pump-fix": 0, "ask": 0, "open": 0}


def test_the_minutes_of_a_tree_have_them(library: Library) -> None:
    """Each on the way to the fix, apart from the work of the steps."""
    tree, _ = tree_from(Source("trees/fuel/pump.yml", TREE, ""))
    assert tree
    work, alone = tree_minutes(with_changeovers(tree, library)), tree_minutes(tree)
    assert work.fixes["pump-fix"].minutes - alone.fixes["pump-fix"].minutes == 1 + 7 + 6
    assert work.wait - alone.wait == 5
    assert with_changeovers(tree, replace(library, conditions={})).steps == tree.steps


USUAL = """\
title: Pump does not run
symptom: [no pump]
steps:
  pump:
    check: Is the pump dry?
    results: [{{result: yes, branch: wire}}, {{result: no, branch: fuse}}]
  wire:
    check: Is the wire good?
    when: [engine-running]
    results: [{{result: yes, branch: hose, weight: {wire}}}, {{result: no, branch: ask}}]
  fuse:
    check: Is the fuse good?
    when: [raised]
    results: [{{result: yes, branch: hose, weight: {fuse}}}, {{result: no, branch: ask}}]
  hose:
    check: Is the hose good?
    when: [raised, engine-running]
    results: [{{result: yes, branch: ask}}, {{result: no, branch: hose-fix}}]
  hose-fix: {{fix: Replace the hose, cause: It is worn, verify: [it runs]}}
  ask: {{stop: Ask the foreman}}
"""


@pytest.mark.parametrize(("wire", "fuse", "minutes"), [(3, 1, 6), (1, 3, 1)])
def test_a_step_is_entered_as_it_mostly_is(library, wire: int, fuse: int, minutes: int) -> None:
    """With the engine running, it's stopped, raised and started: 1, 4 and 1; raised, 1."""
    tree, _ = tree_from(Source("trees/fuel/pump.yml", USUAL.format(wire=wire, fuse=fuse), ""))
    assert tree
    changeover = with_changeovers(tree, library).steps["hose"].changeover
    assert changeover
    assert changeover.minutes == minutes


RUN = """\
title: Brakes are weak
symptom: [weak brakes]
steps:
  stops:
    check: Does it stop?
    by: first-stop
    results: {good: noise, not good: fluid}
  noise:
    check: Does it squeal?
    when: [moving]
    results: {yes: pads, no: ask}
  fluid:
    check: Is the fluid low?
    when: [key-off]
    results: {yes: ask, no: pads}
  pads: {fix: Replace the pads, cause: They are worn, verify: [it stops]}
  ask: {stop: Ask the foreman}
"""


def test_a_procedure_leaves_its_states_to_the_next_step(library) -> None:
    """After the stop in the lot it still moves; to look at the fluid it is parked: 2."""
    tree, _ = tree_from(Source("trees/brakes/weak.yml", RUN, ""))
    assert tree
    steps = with_changeovers(tree, library).steps
    taken = [steps[name].changeover for name in ("stops", "noise", "fluid")]
    assert [changeover and changeover.minutes for changeover in taken] == [0, 0, 2]
