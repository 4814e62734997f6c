"""A procedure of more than 9 steps.

Why: It should fit one screen and one sheet, so that a tech keeps it in mind and comes back to the
tree.

Wrong:

    # kb/procedures/ten.yml
    title: Ten looks
    returns: [good, bad]
    steps:
      look-1:
        check: Is bolt 1 tight?
        results:
          - {result: yes, branch: look-2}
          - {result: no, return: bad}
      look-2:
        check: Is bolt 2 tight?
        results:
          - {result: yes, branch: look-3}
          - {result: no, return: bad}
      look-3:
        check: Is bolt 3 tight?
        results:
          - {result: yes, branch: look-4}
          - {result: no, return: bad}
      look-4:
        check: Is bolt 4 tight?
        results:
          - {result: yes, branch: look-5}
          - {result: no, return: bad}
      look-5:
        check: Is bolt 5 tight?
        results:
          - {result: yes, branch: look-6}
          - {result: no, return: bad}
      look-6:
        check: Is bolt 6 tight?
        results:
          - {result: yes, branch: look-7}
          - {result: no, return: bad}
      look-7:
        check: Is bolt 7 tight?
        results:
          - {result: yes, branch: look-8}
          - {result: no, return: bad}
      look-8:
        check: Is bolt 8 tight?
        results:
          - {result: yes, branch: look-9}
          - {result: no, return: bad}
      look-9:
        check: Is bolt 9 tight?
        results:
          - {result: yes, branch: look-10}
          - {result: no, return: bad}
      look-10:
        check: Is bolt 10 tight?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      looks:
        check: Do all looks pass?
        by: ten
        results: {good: all-good, bad: repair}

Right:

    # kb/procedures/two.yml
    title: Two looks
    returns: [good, bad]
    steps:
      look-1:
        check: Is bolt 1 tight?
        results:
          - {result: yes, branch: look-2}
          - {result: no, return: bad}
      look-2:
        check: Is bolt 2 tight?
        results:
          - {result: yes, return: good}
          - {result: no, return: bad}
    # trees/charging/case.yml
    steps:
      looks:
        check: Do both looks pass?
        by: two
        results:
          - {result: good, branch: all-good}
          - {result: bad, branch: repair}

Fix: Split it into two procedures that each return something worth a name, or leave steps out.
"""

from collections.abc import Iterator
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="long-procedure",
    family=Family.PROCEDURES,
    severity=Severity.WARNING,
    summary="A procedure of more than 9 steps.",
)
MOST_STEPS = 9


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding at the first step too many."""
    for procedure in library.procedures.values():
        steps = [*procedure.tree.steps.values()]
        if len(steps) > MOST_STEPS:
            yield RULE.finding(
                steps[MOST_STEPS].id.at,
                f"`{procedure.name}` has {len(steps)} steps; the limit is {MOST_STEPS}",
                "a tech loses the thread, and the tree that ran it",
                "split it into two procedures, or leave steps out",
            )
