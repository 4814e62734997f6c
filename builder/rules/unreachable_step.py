"""A step that nothing leads to: no path from the start, and no handoff from another tree.

Why: Someone wrote the step because it's needed, and nobody will ever see it.

Wrong:

    fuse:
      check: Is fuse 12 good?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the power wire
      cause: The power wire is open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Does the relay click when switched?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Right:

    fuse:
      check: Is fuse 12 good?
      results:
        - {result: yes, branch: relay}
        - {result: no, branch: repair-feed}
    repair-feed:
      fix: Repair the power wire
      cause: The power wire is open
      weight: 1
      verify: [fuse holds]
    relay:
      check: Does the relay click when switched?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: repair-feed}

Fix: Branch to it from the result that needs it; the result may have been lost with its branch.
Only a step that nobody needs anymore goes out, never one that makes safe or warns.
"""

import re
from collections.abc import Iterator

from builder.graph.moves import leads_nowhere
from builder.model.checks import Check
from builder.model.finding import Finding, Related, Severity
from builder.rules.shared.opposites import words_of_name
from builder.rules.shared.procedure_steps import Running, led_past, steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.unreached import dead_ends, first_unreached

RULE = Rule(
    name="unreachable-step",
    family=Family.FLOW,
    severity=Severity.ERROR,
    summary="A step that nothing leads to.",
)

MOST_LISTED = 3
LOOK_FOR = re.compile(r"(?:look|feel|listen|check) for ([^,]+)", re.IGNORECASE)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for each step that nothing leads to, but not for those behind it.

    Where the tree has a dead end, or a branch to nowhere, that is the place to correct.
    """
    reachable = facts.graph.reachable
    if any(step.id in reachable for step in dead_ends(facts)):
        return
    if not facts.whole and any(
        step.id in reachable and leads_nowhere(facts.tree, step, exit_)
        for step, exit_ in facts.exits
    ):
        return
    proofs = {str(one.step.id): one for one in steps_that_run(facts) if one.procedure.every_time}
    for name in first_unreached(facts):
        if name in proofs:
            yield _left_out(facts, proofs[name])
            continue
        behind = [step for step in _behind(facts, name) if step != name]
        listed = ", ".join(f"`{one}`" for one in behind[:MOST_LISTED])
        also = f", nor to what follows it: {listed}" if behind else ""
        yield RULE.finding(
            facts.tree.steps[name].id.at,
            f"nothing leads to `{name}`{also}",
            "nobody will ever see this step",
            f"write `branch: {name}` at the result that needs it{_lost(facts, name)}",
        )


def _behind(facts: Facts, name: str) -> list[str]:
    """Return the unreached steps that a walk from this one would reach."""
    led: dict[str, list[str]] = {}
    for step, exit_ in facts.exits:
        led.setdefault(str(step.id), []).append(str(exit_.branch.step))
    reached, stack = [], [name]
    while stack:
        at = stack.pop(0)
        if at in facts.tree.steps and at not in facts.graph.reachable and at not in reached:
            reached.append(at)
            stack += led.get(at, [])
    return reached


def _lost(facts: Facts, name: str) -> str:
    """Name the check that tells to look for something, and lacks a result for it; else the above.

    `Look for orange cables`, and no result says what to do with them.
    """
    for step in facts.steps:
        words = [match[1] for line in step.do if (match := LOOK_FOR.match(line))]
        if words and isinstance(step.body, Check) and step.id in facts.graph.reachable:
            results = " ".join(result.text for result in step.body.results)
            if lost := [one for one in words if not words_of_name(one) & words_of_name(results)]:
                return f"; `{step.id}` tells to look for `{lost[0]}`, and has no result for it"
    return _above(facts, name)


def _above(facts: Facts, name: str) -> str:
    """Name the check above it in the file, which most likely led here."""
    names = [*facts.tree.steps]
    above = facts.tree.steps[names[max(names.index(name) - 1, 0)]]
    is_likely = above.id in facts.graph.reachable and isinstance(above.body, Check)
    return f", such as one of `{above.id}`, the check above it" if is_likely else ""


def _left_out(facts: Facts, proof: Running) -> Finding:
    """Return the finding for a step that makes safe: to delete it would be worse."""
    name, after = proof.step.id, led_past(proof)
    past = [
        (step, exit_)
        for step, exit_ in facts.exits
        if after and exit_.branch.step == after and step.id in facts.graph.reachable
    ]
    message, hint = f"nothing leads to `{name}`", f"write `branch: {name}` where it comes first"
    if past:
        message += f": the path to `{after}` now goes without it"
        leading = " and ".join(f"`{step.id}`" for step, _ in past)
        hint = f"in {leading}, write `{name}` instead of `{after}`"
    return RULE.finding(
        name.at,
        message,
        f"it runs `{proof.by}`, and the steps behind it rely on that",
        hint,
        *(Related(exit_.at, f"leads to `{after}`") for _, exit_ in past),
    )
