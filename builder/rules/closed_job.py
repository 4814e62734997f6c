"""A closed job that this tree would now lead to another fix, or can't be walked any more.

The jobs in `kb/cases/` that hold a walk (`walked: yes`) and were fixed are played again with their
readings. Where a job can't be walked any more, because a check is new or a result has other words,
it's a warning.

Why: The repair was tested and held. A tree that now sends the same readings to another part would
have had the customer pay for the wrong one.

Wrong:

    # kb/cases/2026-05-3fa9c1d2.yml
    case: 2026-05-3fa9c1d2
    tree: charging/case
    dates: {opened: 2026-05-01, closed: 2026-05-01}
    walked: yes
    path:
      - {step: volts, result: below 13.2, reading: 12.4 V}
    fix: repair
    outcome: fixed
    # trees/charging/case.yml
    steps:
      volts:
        check: Measure charging voltage at the battery posts
        when: [engine at idle]
        reading: {unit: V, from: 0, to: 20, origin: common practice}
        results: {below 12.2: repair, at least 12.2: all-good}

Right:

    # kb/cases/2026-05-3fa9c1d2.yml
    case: 2026-05-3fa9c1d2
    tree: charging/case
    dates: {opened: 2026-05-01, closed: 2026-05-01}
    walked: yes
    path:
      - {step: volts, result: below 13.2, reading: 12.4 V}
    fix: repair
    outcome: fixed
    # trees/charging/case.yml
    steps:
      volts:
        check: Measure charging voltage at the battery posts
        when: [engine at idle]
        reading: {unit: V, from: 0, to: 20, origin: common practice}
        results: {below 13.2: repair, at least 13.2: all-good}

Fix: Correct the branch or the limit. If the job was wrong, write `outcome: came back` in its file.
"""

from collections.abc import Iterator

from builder.graph.spec_readings import good_of, load_of
from builder.model.checks import Check
from builder.model.ends import Fix
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Case, CaseOutcome, CaseStep
from builder.model.text import Position
from builder.rules.shared.rule import Facts, Family, Rule, as_warning
from builder.walk.compile_shop import looked_up_tables
from builder.walk.compile_tree import tree_table
from builder.walk.job_replay import Deviation, OneTree, deviations
from builder.walk.job_stretches import trees_of_case

RULE = Rule(
    name="closed-job",
    family=Family.EVIDENCE,
    severity=Severity.ERROR,
    summary="A closed job that now ends at another fix.",
)
WHY = "the repair held: the next vehicle with these readings would get the wrong part"
CANNOT_WALK = "you can't tell anymore if the tree would find this repair"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every closed job that leaves its way through this tree."""
    tree, library = facts.tree, facts.library
    if not facts.whole or tree.is_procedure:
        return
    cases = [one for one in library.cases.values() if _holds_a_walk(one, tree.id)]
    if not cases:
        return
    tables = looked_up_tables(library, OneTree(tree_table(tree, library)))
    for case in cases:
        if (case.fix_in or case.tree) == tree.id and case.fix not in tree.steps:
            continue  # the mistake is in the case, and reported there
        for deviation in deviations(tables, tree.id, case):
            yield _finding(facts, case, deviation)


def _holds_a_walk(case: Case, tree: str) -> bool:
    is_proof = case.walked and case.outcome is CaseOutcome.FIXED and case.fix is not None
    return is_proof and tree in trees_of_case(case)


def _finding(facts: Facts, case: Case, deviation: Deviation) -> Finding:
    if deviation.measured and _has_result(facts, deviation.measured):
        return _misfit(facts, case, deviation.measured, deviation.gives)
    related = Related(case.fix.at if case.fix else case.at, f"the job `{case.id}`")
    job = f"closed job `{case.id}`"
    at = _place(facts, deviation.step)
    where = f", from `{deviation.step}` on" if deviation.step else ""
    if deviation.problem:
        return as_warning(RULE.finding(
            at, f"{job} can't be walked any more{where}: {deviation.problem}", CANNOT_WALK,
            f"{_branch(facts, case, deviation.step)}walk the job again on this tree, or write what "
            f"it answered into {case.file}", related,
        ))  # fmt: skip
    return RULE.finding(
        at, f"{job} led to `{deviation.was}`; now it leads to `{deviation.now}`{where}", WHY,
        f"{_branch(facts, case, deviation.step, deviation.was) or 'correct the branch or limit; '}"
        f"if the job is wrong, write {_other_fix(facts, deviation)}`outcome: came back` into "
        f"{case.file}", related,
    )  # fmt: skip


def _other_fix(facts: Facts, deviation: Deviation) -> str:
    step = facts.tree.steps.get(deviation.now)
    return f"`fix: {deviation.now}` or " if step and isinstance(step.body, Fix) else ""


def _has_result(facts: Facts, measured: CaseStep) -> bool:
    """Whether the check still has the job's result: then it is the reading that doesn't fit it."""
    step = facts.tree.steps.get(measured.step)
    results = step.body.results if step and isinstance(step.body, Check) else ()
    return any(one.text == measured.result for one in results) and not measured.inside


def _misfit(facts: Facts, case: Case, measured: CaseStep, gives: str) -> Finding:
    """Return the finding for a reading that isn't what the job says of it."""
    step = facts.tree.steps[measured.step]
    assert isinstance(step.body, Check)
    typed = [measured.reading] if measured.reading else [*measured.readings.values()]
    vehicle = facts.library.vehicles.get(case.vehicle.get("id", ""))
    named = (facts.library.specs.get(reading.spec or "") for reading in step.body.readings)
    good = [good_of(spec, vehicle, load_of(step)).text for spec in named if spec]
    return RULE.finding(
        typed[0].at,
        f"{' and '.join(typed)} at `{measured.step}` isn't `{measured.result}`, as this closed job "
        f"has it: it's `{gives}`",
        WHY,
        f"correct the reading, or the result; if it's right, the limit was moved: {case.tree} "
        "must give these readings the result that they had",
        *(Related(one.at, f"good is {one}") for one in good),
        Related(step.text.at, "the check"),
    )


def _branch(facts: Facts, case: Case, step: str, to: str = "") -> str:
    """Begin a hint with the branch that the job took last; "" where that isn't known."""
    body = facts.tree.steps[step].body if step in facts.tree.steps else None
    answers = [one.result for one in case.path if one.step == step]
    if not isinstance(body, Check) or not answers:
        return ""
    lines = [one.branch.text.at.line for one in body.results if one.text == answers[-1]]
    if to in facts.tree.steps and lines:
        return f"if the job is right, lead `{answers[-1]}` at line {lines[0]} to `{to}`; "
    return f"if the branch at line {lines[0]} is wrong, correct it; else " if lines else ""


def _place(facts: Facts, step: str) -> Position:
    return facts.tree.steps[step].text.at if step in facts.tree.steps else facts.tree.at
