"""A part in `never_on` that doesn't exist; or a step that runs the procedure on such a part. The
second is a warning: the walk leaves by `cannot_test`.

Why: `never_on` keeps a tech's test light out of an airbag. A misspelled part protects nobody.

Wrong:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    takes:
      part: {is: part}
    returns: [good, bad]
    never_on: [raido]
    steps:
      bulb:
        check: Does a headlight bulb glow at the <part>?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}

Right:

    # kb/procedures/feed-proof.yml
    title: Is the feed good?
    takes:
      part: {is: part}
    returns: [good, bad]
    never_on: [radio]
    steps:
      bulb:
        check: Does a headlight bulb glow at the <part>?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      feed:
        check: Is the feed good at the steering module?
        by: feed-proof
        with: {part: steering-unit}
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Write the part as it is in `kb/parts.yml`, or as its module's record is called. Don't run the
procedure on it: test it per the maker's service information.
"""

from collections.abc import Iterator
from datetime import date

from builder.graph.runs import values_of
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.part_hint import is_part, part_hint
from builder.rules.shared.procedure_steps import steps_that_run
from builder.rules.shared.rule import Facts, Family, Rule, as_warning

RULE = Rule(
    name="never-on",
    family=Family.PROCEDURES,
    severity=Severity.ERROR,
    summary="A part in `never_on` doesn't exist, or a step runs the procedure on it.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step that runs a procedure on a part it must not be run on."""
    for running in steps_that_run(facts):
        for value in values_of(running.check, running.procedure).values():
            if value in running.procedure.never_on:
                finding = RULE.finding(
                    running.by.at,
                    f"`{running.by}` must never be run on `{value}`: it is in its `never_on`",
                    "the procedure says that it can hurt someone, or ruin that part",
                    "test that part per the maker's service information, or end with a stop",
                )
                # With `cannot_test` the walk leaves by it, before the first step.
                yield as_warning(finding) if running.check.cannot_test else finding


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every part in `never_on` that doesn't exist."""
    for procedure in library.procedures.values():
        for part in procedure.never_on:
            if not is_part(part, library):
                yield RULE.finding(
                    part.at,
                    f"part `{part}` doesn't exist",
                    "the procedure can still be run on what was meant",
                    part_hint(part, library),
                )
