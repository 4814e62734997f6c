"""A result of a test at one module that hands another module over to the next tree.

Why: One module is silent, and the tech tests another one that is good.

Wrong:

    # kb/procedures/answers.yml
    title: Does the module answer?
    takes: {part: {is: part}}
    returns: [yes, no]
    steps:
      scan:
        check: Does the scan tool reach the <part>?
        results:
          - {result: yes, return: yes}
          - {result: no, return: no}
    # trees/network/silent.yml
    asks: {module: {ask: Which module?, one_of: [radio, horn-unit]}}
    steps:
      feed:
        check: Does the <module> get power?
        results: {yes: all-good, no: repair}
    # trees/charging/case.yml
    steps:
      radio:
        check: Does the radio answer?
        by: answers
        with: {part: radio}
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: network/silent, with: {module: horn-unit}}

Right:

    # kb/procedures/answers.yml
    title: Does the module answer?
    takes: {part: {is: part}}
    returns: [yes, no]
    steps:
      scan:
        check: Does the scan tool reach the <part>?
        results:
          - {result: yes, return: yes}
          - {result: no, return: no}
    # trees/network/silent.yml
    asks: {module: {ask: Which module?, one_of: [radio, horn-unit]}}
    steps:
      feed:
        check: Does the <module> get power?
        results: {yes: all-good, no: repair}
    # trees/charging/case.yml
    steps:
      radio:
        check: Does the radio answer?
        by: answers
        with: {part: radio}
        results:
          - {result: yes, branch: all-good}
          - {result: no, branch: network/silent, with: {module: radio}}

Fix: Hand over the module that was tested, or correct the one under `with` of the check.
"""

from collections.abc import Iterator

from builder.model.checks import Check
from builder.model.finding import Finding, Related, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="other-module",
    family=Family.PROCEDURES,
    severity=Severity.WARNING,
    summary="A handoff with another module than the one that was tested.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every such handoff."""
    modules = facts.library.modules
    for step in facts.steps:
        body = step.body
        if not isinstance(body, Check) or not body.by:
            continue
        tested = [value for value in body.with_.values() if str(value) in modules]
        for result in body.results:
            for given in result.with_.values():
                if tested and str(given) in modules and given not in tested:
                    yield RULE.finding(
                        given.at,
                        f"`{step.id}` tests `{tested[0]}`; `{result.text}` hands over `{given}`",
                        "the tech tests a module that is good, and not the one that failed here",
                        f"write `{tested[0]}`, or correct it at `{step.id}`",
                        Related(tested[0].at, "the module that is tested"),
                    )  # fmt: skip
