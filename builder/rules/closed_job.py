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

from builder.model.checks import Check
from builder.model.finding import Finding, Related, Severity
from builder.model.knowledge import Case, CaseOutcome
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
    related = Related(case.at, f"the job `{case.id}`")
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
        f"correct the branch or the limit; if the job is wrong, correct {case.file}, or write "
        "`outcome: came back` there", related,
    )  # fmt: skip


def _branch(facts: Facts, case: Case, step: str) -> str:
    """Begin a hint with the branch that the job took last; "" where that isn't known."""
    body = facts.tree.steps[step].body if step in facts.tree.steps else None
    answers = [one.result for one in case.path if one.step == step]
    if not isinstance(body, Check) or not answers:
        return ""
    lines = [one.branch.text.at.line for one in body.results if one.text == answers[-1]]
    return f"if the branch at line {lines[0]} is wrong, correct it; else " if lines else ""


def _place(facts: Facts, step: str) -> Position:
    return facts.tree.steps[step].text.at if step in facts.tree.steps else facts.tree.at
