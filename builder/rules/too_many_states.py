"""A tree whose steps can be reached in so many different states that they can't be followed.

Why: The check can't tell in which state the vehicle is at each step, and neither can a tech. What
it says of states and cautions is not complete for this tree.

Wrong:

    steps:
      hub:
        check: Which connector is next?
        at_most: 12
        spent: repair
        results:
          - {result: plug 0, branch: u0}
          - {result: plug 1, branch: u1}
          - {result: plug 2, branch: u2}
          - {result: plug 3, branch: u3}
          - {result: plug 4, branch: u4}
          - {result: plug 5, branch: u5}
          - {result: plug 6, branch: u6}
          - {result: plug 7, branch: u7}
          - {result: plug 8, branch: u8}
          - {result: plug 9, branch: u9}
          - {result: plug 10, branch: u10}
          - {result: plug 11, branch: u11}
          - {result: none, branch: repair}
      u0: {action: Pull it, when: [key-off, {unplugged: part 0}], then: hub}
      u1: {action: Pull it, when: [key-off, {unplugged: part 1}], then: hub}
      u2: {action: Pull it, when: [key-off, {unplugged: part 2}], then: hub}
      u3: {action: Pull it, when: [key-off, {unplugged: part 3}], then: hub}
      u4: {action: Pull it, when: [key-off, {unplugged: part 4}], then: hub}
      u5: {action: Pull it, when: [key-off, {unplugged: part 5}], then: hub}
      u6: {action: Pull it, when: [key-off, {unplugged: part 6}], then: hub}
      u7: {action: Pull it, when: [key-off, {unplugged: part 7}], then: hub}
      u8: {action: Pull it, when: [key-off, {unplugged: part 8}], then: hub}
      u9: {action: Pull it, when: [key-off, {unplugged: part 9}], then: hub}
      u10: {action: Pull it, when: [key-off, {unplugged: part 10}], then: hub}
      u11: {action: Pull it, when: [key-off, {unplugged: part 11}], then: hub}

Right:

    steps:
      hub:
        check: Is the alternator connector green?
        when: [key-off, {unplugged: alternator}]
        results: {yes: repair, no: plug-in}
      plug-in:
        action: Start the engine
        when: [{plugged-in: alternator}, engine-running]
        then: all-good

Fix: Plug in again what is no longer needed: `{plugged-in: alternator}`. Or split the tree.
"""

from collections.abc import Iterator

from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="too-many-states",
    family=Family.STATES,
    severity=Severity.WARNING,
    summary="A tree with too many states of the vehicle to follow.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield one finding for a tree that was given up."""
    paths = facts.paths()
    if paths is not None and not paths.whole:
        yield RULE.finding(
            facts.tree.start.text.at,
            "the vehicle can be in too many states along the paths of this tree",
            "the check can't tell which state a step is reached in, and neither can a tech",
            "put things back in time, such as `{plugged-in: alternator}`, or split the tree",
        )
