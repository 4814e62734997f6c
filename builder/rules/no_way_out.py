"""A step runs a procedure that can't always be finished, has no `cannot_test`, and the shop doesn't
say whom to call.

Why: A check inside that can't be done, or a part in `never_on`, leaves by `cannot_test` of the
step. Without it the tech is sent to the shop's `stuck`.

Wrong:

    # site_config/shop.yml
    shop: Case shop
    site_address: https://charts.example/
    labor_rate: 90
    currency: USD
    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    returns: [good, bad]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        results: {good: all-good, bad: repair}

Right:

    # site_config/shop.yml
    shop: Case shop
    site_address: https://charts.example/
    labor_rate: 90
    currency: USD
    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    returns: [good, bad]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        cannot_test: all-good
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Add `cannot_test` to the step, or `stuck: {call: ...}` to `site_config/shop.yml`.
"""

from collections.abc import Iterator

from builder.graph.runs import procedure_of
from builder.model.checks import Check
from builder.model.finding import Finding, Severity
from builder.model.procedures import Procedure, Procedures
from builder.rules.shared.procedure_steps import steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-way-out",
    family=Family.PROCEDURES,
    severity=Severity.WARNING,
    summary="A procedure that can't be finished leads nowhere.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step without a way out of its procedure."""
    if facts.library.shop.stuck:
        return
    for running in steps_that_run(facts):
        inside = _stuck_inside(running.procedure, facts.library.procedures, frozenset())
        if inside and running.check.cannot_test is None:
            yield RULE.finding(
                running.by.at,
                f"step `{running.step.id}` has no `cannot_test`, and `{running.by}` {inside}",
                "a tech who can't test has nowhere to go",
                "add `cannot_test:` to the step, or `stuck:` to site_config/shop.yml",
            )


def _stuck_inside(procedure: Procedure, procedures: Procedures, outer: frozenset[str]) -> str:
    """Say why a walk may have to leave a procedure before its end; nothing if it never does."""
    if procedure.never_on:
        return f"is never run on `{procedure.never_on[0]}`"
    for step in procedure.tree.steps.values():
        if isinstance(step.body, Check) and step.body.cannot_test is None:
            inner = procedure_of(step, procedures)
            if inner is None:
                return f"may stop at `{step.id}`"
            if inner.name not in outer:
                inside = _stuck_inside(inner, procedures, outer | {procedure.name})
                if inside:
                    return inside
    return ""
