"""The state in which a box begins, with that of the procedure it runs."""

from dataclasses import replace

import pytest

from builder.chart.begun_state import begun_state
from builder.model.checks import Check
from builder.model.library import Library
from builder.model.text import Text
from builder.model.tree import Need, Step, Tree
from builder.wording.results import NO_BREAK

OWN = ["engine running", "loads off for 5 min", "hooked up with key on, engine off"]


@pytest.fixture
def run(small: Tree) -> Step:
    """Return a check that a procedure finds the result of."""
    step = small.steps["rest"]
    assert isinstance(step.body, Check)
    body = replace(step.body, by=Text("first-stop"), with_={Text("speed"): Text("20 mph")})
    return replace(
        step,
        needs=(Need(Text("engine-running")),),
        when=(Text("loads off for 5 min"),),
        hook_up=Text("key-on"),
        body=body,
    )


def said(step: Step, library: Library) -> list[str]:
    """Return the words of a state."""
    return [words.replace(NO_BREAK, " ") for words in begun_state(step, library)]


def with_start(library: Library, **changed: object) -> Library:
    """Change the first step of the procedure."""
    procedure = library.procedures["first-stop"]
    first = replace(procedure.tree.start, **changed)  # type: ignore[arg-type]
    tree = replace(procedure.tree, steps={**procedure.tree.steps, first.id: first})
    return replace(library, procedures={"first-stop": replace(procedure, tree=tree)})


def test_the_state_of_its_procedure_comes_last(run: Step, library: Library) -> None:
    """Each state once, and a number with its unit."""
    assert said(run, library) == [*OWN, "on its wheels", "driving", "pedal pumped firm"]
    assert f"5{NO_BREAK}min" in begun_state(run, library)[1]
    again = replace(run, when=(Text("pedal pumped firm"),))
    assert said(again, library).count("pedal pumped firm") == 1


def test_what_is_handed_over_stands_in_the_state(run: Step, library: Library) -> None:
    """In its words, and as the value of a state."""
    needs = (Need(Text("unplugged"), Text("<speed>")), Need(Text("key-on")))
    told = with_start(library, when=(Text("at <speed>"),), needs=needs)
    assert said(run, told) == [*OWN, "20 mph unplugged", "key on, engine off", "at 20 mph"]


def test_a_procedure_that_cannot_be_run_adds_nothing(run: Step, library: Library) -> None:
    """Nor does a step that runs none."""
    procedure = replace(library.procedures["first-stop"], run=None)
    assert said(run, replace(library, procedures={"first-stop": procedure})) == OWN
    assert said(run, replace(library, procedures={})) == OWN
    assert said(replace(run, hook_up=None, needs=()), replace(library, procedures={})) == OWN[1:2]
