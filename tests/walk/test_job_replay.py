"""Closed jobs played again through changed trees: what sends one elsewhere is noticed, no more.

The jobs are drilled in two shops. What a change does to a job is told by a small reading of the
tree in this file, which follows the recorded words and knows nothing of the walk.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from random import Random

import pytest

from builder.model.checks import Branch, Check, Result
from builder.model.ends import Fix
from builder.model.knowledge import Case
from builder.model.text import NOWHERE, Text
from builder.model.tree import Action, Step, Tree
from builder.walk.case_of_walk import case_of_walk
from builder.walk.compile_tree import tree_table
from builder.walk.job_replay import Deviation, OneTree, deviations
from builder.walk.walk_tables import WalkTables
from tests.walk.drilled import DrilledShop, drilled_fixes, drilled_shop

TESTS = Path(__file__).parents[1]
SHOPS = (TESTS / "samples", TESTS / "shop")
Job = tuple[DrilledShop, Tree, Case]


@cache
def jobs() -> list[Job]:
    """Return the closed jobs of both shops."""
    found = []
    for folder in SHOPS:
        shop = drilled_shop(folder)
        for job in drilled_fixes(folder):
            case = case_of_walk(shop.tables, job.state, shop.library, {}, date(2026, 5, 7))
            assert isinstance(case, Case)
            found.append((shop, job.tree, case))
    return found


def played(shop: DrilledShop, tree: Tree, case: Case) -> list[Deviation]:
    """Return where a job leaves its way through a tree."""
    table = tree_table(tree, shop.library)
    tables = WalkTables(shop.tables.shop, OneTree(table), shop.library.conditions)
    return [*deviations(tables, tree.id, case)]


def with_body(tree: Tree, step: Step, body: Check | Action) -> Tree:
    """Return the tree with another body in a step."""
    return replace(tree, steps={**tree.steps, str(step.id): replace(step, body=body)})


def answers_of(case: Case) -> dict[str, str]:
    """Return the recorded words by step, of the job's own tree."""
    return {str(one.step): str(one.result) for one in case.path if one.inside is None}


def end_by_hand(tree: Tree, case: Case) -> str:
    """Follow the recorded words; return the end, or the step that was never answered."""
    answers, step = answers_of(case), tree.start
    for _ in range(100):
        match step.body:
            case Action(then=then):
                branch = then
            case Check(results=results):
                words = answers.get(str(step.id))
                branch = next((one.branch for one in results if str(one.text) == words), None)
            case _:
                return str(step.id)
        if branch is None or branch.step is None or branch.tree or branch.step not in tree.steps:
            return str(step.id)
        step = tree.steps[branch.step]
    return "around in circles"


def checks_met(tree: Tree, case: Case) -> list[tuple[Step, Check]]:
    """Return the checks of the tree that the job answered."""
    steps = (tree.steps[name] for name in answers_of(case))
    return [(step, step.body) for step in steps if isinstance(step.body, Check)]


def swapped(tree: Tree, case: Case, random: Random) -> Tree:
    """Swap where two results of a check that was met lead."""
    step, check = random.choice(checks_met(tree, case))
    one, other = random.sample(range(len(check.results)), 2)
    results = [*check.results]
    results[one] = replace(check.results[one], branch=check.results[other].branch)
    results[other] = replace(check.results[other], branch=check.results[one].branch)
    return with_body(tree, step, replace(check, results=tuple(results)))


def retargeted(tree: Tree, case: Case, random: Random) -> Tree:
    """Lead the result that was found to another fix."""
    step, check = random.choice(checks_met(tree, case))
    words = answers_of(case)[str(step.id)]
    fixes = [str(one.id) for one in tree.steps.values() if isinstance(one.body, Fix)]
    to = random.choice(fixes)
    branch = Branch(Text(to), to)
    results = (replace(one, branch=branch) if one.text == words else one for one in check.results)
    return with_body(tree, step, replace(check, results=tuple(results)))


def shuffled(tree: Tree, case: Case, random: Random) -> Tree:
    """Write the results of a check in another order, where their order doesn't count."""
    step, check = random.choice(checks_met(tree, case))
    if check.several or any(one.otherwise for one in check.results):
        return tree
    results = random.sample(check.results, len(check.results))
    return with_body(tree, step, replace(check, results=tuple(results)))


def led_elsewhere(tree: Tree, case: Case, random: Random) -> Tree:
    """Lead a result that was not found elsewhere."""
    step, check = random.choice(checks_met(tree, case))
    words, to = answers_of(case)[str(step.id)], random.choice([*tree.steps])
    results = [*check.results]
    at = random.randrange(len(results))
    if str(results[at].text) != words:
        results[at] = replace(results[at], branch=Branch(Text(to), to))
    return with_body(tree, step, replace(check, results=tuple(results)))


def reworded(tree: Tree, _case: Case, random: Random) -> Tree:
    """Ask in other words, with a note, and take longer."""
    step = random.choice([*tree.steps.values()])
    changed = replace(step, text=Text("Look again"), note=Text("It may be hot."), minutes=None)
    return replace(tree, steps={**tree.steps, str(step.id): changed})


def one_more_result(tree: Tree, case: Case, random: Random) -> Tree:
    """Add a result in words to a check that has no readings."""
    met = [one for one in checks_met(tree, case) if not one[1].readings and not one[1].by]
    if not met:
        return reworded(tree, case, random)
    step, check = random.choice(met)
    new = Result(NOWHERE, Text("something else"), Branch(Text(str(step.id)), str(step.id)))
    return with_body(tree, step, replace(check, results=(*check.results, new)))


def one_more_action(tree: Tree, case: Case, random: Random) -> Tree:
    """Put an action before a step that was met."""
    step, check = random.choice(checks_met(tree, case))
    words = answers_of(case)[str(step.id)]
    taken = next(one for one in check.results if str(one.text) == words)
    if taken.branch.step is None or taken.branch.tree:
        return tree
    new = Step(Text("new"), NOWHERE, Text("Wipe it"), Action(taken.branch))
    branch = Branch(Text("new"), "new")
    results = (replace(one, branch=branch) if one is taken else one for one in check.results)
    changed = with_body(tree, step, replace(check, results=tuple(results)))
    return replace(changed, steps={**changed.steps, "new": new})


Change = Callable[[Tree, Case, Random], Tree]


def changed_jobs(seed: int, kinds: tuple[Change, ...]) -> Iterator[tuple[Job, Tree]]:
    """Yield changes of the trees of jobs, without end."""
    random, all_jobs = Random(seed), jobs()
    while True:
        job = random.choice(all_jobs)
        _, tree, case = job
        if case.fix_in is None and end_by_hand(tree, case) == case.fix:
            yield job, random.choice(kinds)(tree, case, random)


def test_fifty_changes_that_send_a_job_elsewhere_are_found() -> None:
    """Each is a deviation that names the fix that it was, and a step of the job."""
    found = 0
    for (shop, _, case), changed in changed_jobs(50, (swapped, retargeted)):
        if end_by_hand(changed, case) == case.fix:
            continue
        (deviation,) = played(shop, changed, case)
        assert deviation.was == case.fix
        assert deviation.now != case.fix
        assert deviation.step in answers_of(case)
        assert bool(deviation.problem) is not bool(deviation.now)
        found += 1
        if found == 50:
            return


def test_fifty_changes_that_do_not_are_not() -> None:
    """Words, order, other branches and more steps send no job elsewhere."""
    kinds = (shuffled, led_elsewhere, reworded, one_more_result, one_more_action)
    met = 0
    for (shop, tree, case), changed in changed_jobs(51, kinds):
        if changed == tree:
            continue
        assert played(shop, changed, case) == []
        met += 1
        if met == 50:
            return


@pytest.mark.parametrize("folder", SHOPS)
def test_every_job_is_walked_again_on_the_tree_as_it_is(folder: Path) -> None:
    """What was filed today has nothing against it today."""
    own = [job for job in jobs() if job[0].folder == folder]
    assert own
    for shop, tree, case in own:
        assert played(shop, tree, case) == []


def test_a_moved_limit_is_noticed_by_the_reading() -> None:
    """A spec that now takes 7.968 V for good sends the cable's job elsewhere."""
    shop, tree, case = next(job for job in jobs() if job[2].fix == "cable-fix")
    spec = shop.tables.shop["specs"]["charge-cable-drop"]
    wide = {**spec, "good": {"ranges": {"": [["-Infinity", 0], ["9", 1]]}}}
    vehicles = {id_: {**one, "specs": {}} for id_, one in shop.tables.shop["vehicles"].items()}
    table = {**shop.tables.shop, "vehicles": vehicles,
             "specs": {**shop.tables.shop["specs"], "charge-cable-drop": wide}}  # fmt: skip
    tables = WalkTables(table, OneTree(tree_table(tree, shop.library)), shop.library.conditions)
    (deviation,) = deviations(tables, tree.id, case)
    assert (deviation.step, deviation.was) == ("cable", "cable-fix")
