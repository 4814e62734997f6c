"""Order on every path: against a walk of every state, and across handoffs."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from builder.graph.moves import Place
from builder.graph.requirements import SUPPLY_HELD
from builder.graph.summaries import summary_of
from builder.model.checks import Branch, Check, Result
from builder.model.ends import Fix
from builder.model.library import Library
from builder.model.shop import Shop
from builder.model.text import Number, Text
from builder.model.tree import Action, Deed, Status, Step, Symptom, Tree
from builder.rules.codes_before_clearing import check
from builder.rules.shared.order import reached_steps, unmet
from builder.rules.shared.rule import facts_of

NO_PLACE = Text("").at
SHOP = Shop(Text("Shop"), Text("https://charts.example/"), Number("1"), Text("USD"))


def branch(name: str) -> Branch:
    """Return a branch to a step, or with a `/` to another tree."""
    tree, _, step = name.partition("#")
    return Branch(Text(name), step or None, tree) if "/" in name else Branch(Text(name), name)


def step(name: str, leads: list[str], does: str = "", done: frozenset[int] = frozenset()) -> Step:
    """Return a check with a result for every branch; without branches, a fix."""
    results = tuple(
        Result(NO_PLACE, Text(str(n)), branch(to), done=n in done) for n, to in enumerate(leads)
    )
    body = Check(results) if leads else Fix(Text("worn"))
    deeds = tuple(Deed(Text(verb), verb) for verb in does.split())
    return Step(Text(name), NO_PLACE, Text(name), body, does=deeds)


def tree(name: str, *steps: Step, words: str = "it fails") -> Tree:
    """Return a tree; without words it has no symptom, so that only other trees lead to it."""
    return Tree(
        id=name,
        file=f"trees/{name}.yml",
        at=NO_PLACE,
        title=Text(name),
        status=Status.READY,
        system=Text("charging"),
        symptom=Symptom((Text(words),) if words else ()),
        steps={str(step.id): step for step in steps},
        revision="",
    )


def library(*trees: Tree) -> Library:
    """Return a library of some trees."""
    return Library(SHOP, trees={tree.id: summary_of(tree) for tree in trees})


def unrecorded(judged: Tree, *others: Tree) -> list[str]:
    """Return the steps that can clear DTCs before they are recorded."""
    facts = facts_of(judged, library(judged, *others))
    paths = (finding.message.split(": ")[-1] for finding in check(facts))
    return sorted(path.split(" -> ")[-1] for path in paths)


@st.composite
def trees(draw) -> Tree:
    """Draw a tree of six steps with any branches; some hold, release or need the supply."""
    names = [f"s{n}" for n in range(6)]
    steps = []
    for name in names:
        leads = draw(st.lists(st.sampled_from(names), max_size=3))
        does = draw(st.sampled_from(["", "", "hold-supply", "release-supply", "configure"]))
        done = draw(st.frozensets(st.integers(0, 2), max_size=2))
        steps.append(step(name, leads, does, frozenset(n for n in done if n < len(leads))))
    return tree("charging/drawn", *steps)


def walked(judged: Tree) -> set[str]:
    """Return the steps that some walk reaches without a held supply, by walking every state."""
    seen: set[tuple[str, bool]] = set()
    stack = [(judged.start.id, False)]
    while stack:
        state = stack.pop()
        if state in seen:
            continue
        seen.add(state)
        name, held = state
        here = judged.steps[name]
        stack += [(to, now) for to, now in _next_states(here, held) if to in judged.steps]
    return {str(name) for name, held in seen if not held}


def _next_states(here: Step, held: bool) -> Iterator[tuple[str, bool]]:
    if not isinstance(here.body, Check):
        return
    marked = any(result.done for result in here.body.results)
    for result in here.body.results:
        verbs = [deed.verb for deed in here.does]
        if "release-supply" in verbs:
            yield str(result.branch.step), False
        elif "hold-supply" in verbs and (result.done or not marked):
            yield str(result.branch.step), True
        else:
            yield str(result.branch.step), held


@settings(max_examples=150, deadline=None)
@given(trees())
def test_the_reached_steps_are_those_of_a_walk_of_all_states(judged: Tree) -> None:
    """Removing the exits that meet it finds the same steps as walking with the state."""
    facts = facts_of(judged, library(judged))
    reached = unmet(facts, SUPPLY_HELD)
    assert {place.step for place in reached.arrived_by} == walked(judged)
    for _, place in reached_steps(reached, facts):
        path = reached.path_to(place)
        assert path[-1] == place.step
        for source, target in pairwise(path):
            body = judged.steps[source].body
            assert isinstance(body, Check)
            assert target in {str(result.branch.step) for result in body.results}


RECORDING = tree(
    "charging/first",
    step("record", ["ask"], "record-codes"),
    step("ask", ["charging/second", "repair"]),
    step("repair", []),
)
CLEARING = tree(
    "charging/second",
    step("clear", ["repair"], "clear-codes"),
    step("repair", []),
    words="",
)


def test_a_tree_that_only_others_lead_to_starts_with_what_they_did() -> None:
    """Without a symptom nobody opens it directly, so the DTCs are recorded when it begins."""
    assert unrecorded(CLEARING, RECORDING) == []


def test_anyone_can_open_a_tree_with_a_symptom() -> None:
    """Then what its callers did doesn't count."""
    opened = replace(CLEARING, symptom=Symptom((Text("lamp on"),)))
    assert unrecorded(opened, RECORDING) == ["clear"]


def test_one_caller_that_did_nothing_is_enough() -> None:
    """Every tree that hands off must have done it."""
    hasty = tree("charging/third", step("ask", ["charging/second", "repair"]), step("repair", []))
    assert unrecorded(CLEARING, RECORDING, hasty) == ["clear"]


def test_a_tree_that_nobody_leads_to_has_nothing() -> None:
    """Without callers it counts as not done."""
    assert unrecorded(CLEARING) == ["clear"]


def test_a_loop_of_handoffs_proves_nothing() -> None:
    """Two trees that only hand off to each other prove nothing for each other."""
    one = tree("charging/one", step("ask", ["charging/two"]), words="")
    two = tree("charging/two", step("clear", ["charging/one"], "clear-codes"), words="")
    assert unrecorded(two, one) == ["clear"]


def test_what_a_caller_undid_does_not_count() -> None:
    """A power supply that was released before the handoff is not held after it."""
    caller = tree(
        "charging/first",
        step("hold", ["drive"], "hold-supply"),
        step("drive", ["charging/second"], "drive"),
    )
    called = tree(
        "charging/second", step("write", ["repair"], "configure"), step("repair", []), words=""
    )
    facts = facts_of(called, library(called, caller))
    assert Place("write") in unmet(facts, SUPPLY_HELD).arrived_by
    held = replace(caller, steps={**caller.steps, "drive": step("drive", ["charging/second"])})
    facts = facts_of(called, library(called, held))
    assert Place("write") not in unmet(facts, SUPPLY_HELD).arrived_by


def test_back_returns_to_its_caller_alone() -> None:
    """An action called from two steps does not lead from the one to the other."""
    doors = Step(Text("doors"), NO_PLACE, Text("Shut"), Action(Branch(Text("back"))))
    judged = tree(
        "charging/back",
        step("which", ["early", "record"]),
        step("early", ["doors", "repair"]),
        step("record", ["clear"], "record-codes"),
        step("clear", ["doors", "repair"], "clear-codes"),
        doors,
        step("repair", []),
    )
    assert unrecorded(judged) == []
