"""A step runs a procedure and has no result for one of the words that it returns.

Why: The procedure ends with that word, and the tech has nowhere to go.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    returns: [good, bad, blown fuse]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, branch: fuse}
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, return: bad}
          - {result: no, return: blown fuse}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good under load?
    returns: [good, bad, blown fuse]
    steps:
      bulb:
        check: Does a headlight bulb glow at the pins?
        results:
          - {result: yes, return: good}
          - {result: no, branch: fuse}
      fuse:
        check: Is the fuse good?
        results:
          - {result: yes, return: bad}
          - {result: no, return: blown fuse}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the radio?
        by: feed-proof
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}
          - {result: blown fuse, branch: repair}

Fix: Add a result for the word, and lead it where it belongs.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.close_names import names_meant
from builder.rules.shared.procedure_steps import meant_procedure, other_word, steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="unhandled-word",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A step has no result for a word that its procedure returns.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every returned word that a step has no result for."""
    for running in steps_that_run(facts):
        if other_word(running) or meant_procedure(facts, running):
            continue  # `no-such-word` speaks
        returns = running.procedure.returns
        results = {str(result.text) for result in running.check.results}
        slips = names_meant(results, returns)  # for `no-such-word`
        for word in returns:
            if word not in results and word not in slips:
                yield RULE.finding(
                    running.by.at,
                    f"`{running.by}` can return `{word}`, and step `{running.step.id}` has no "
                    "result for it",
                    "the tech comes back with this word and has nowhere to go",
                    f"add a result `{word}`",
                )
