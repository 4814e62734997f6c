"""A `chance` of going back and the weights of the ends that disagree, by more than a factor of two,
on how often a step is used up. With a chance c for the only way back and `at_most: n`, a share of c
to the power of n of all walks leaves the step by `spent`; the weights of the ends beyond `spent`
give that share again. A way back without a chance counts as never taken. Shares below 1% don't
count.

Why: The minutes the office plans with depend on both, and can't be right with both.

Wrong:

    bleed:
      check: Is the pedal firm after bleeding?
      at_most: 2
      spent: repair
      results:
        - {result: firm, branch: bled}
        - {result: still soft, branch: bleed, chance: 0.1}
    bled:
      fix: Replace the brake fluid
      cause: Air in the brake fluid
      weight: 1
      verify: [pedal firm at each stop]

Right:

    bleed:
      check: Is the pedal firm after bleeding?
      at_most: 2
      spent: repair
      results:
        - {result: firm, branch: bled}
        - {result: still soft, branch: bleed, chance: 0.6}
    bled:
      fix: Replace the brake fluid
      cause: Air in the brake fluid
      weight: 2
      verify: [pedal firm at each stop]

Fix: Correct the `chance`, the weights or `at_most`, so that they agree on how often the step is
used up.
"""

from collections.abc import Iterator
from fractions import Fraction

from builder.model.finding import Finding, Severity
from builder.plan.spent_shares import SpentShares, spent_shares
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="chance-against-weights",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="Chances and weights that disagree on how often a step is used up.",
)
MAX_RATIO = 2  # between the two shares
MIN_SHARE = Fraction(1, 100)  # of all walks; less doesn't change the minutes


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step on whose `spent` chances and weights disagree."""
    if facts.tree.broken or not any(step.spent for step in facts.tree.steps.values()):
        return  # a step with a text error changes all shares
    for shares in spent_shares(facts.tree):
        step = facts.tree.steps[shares.step]
        if step.spent and _disagree(shares):
            yield RULE.finding(
                step.spent.text.at,
                f"chances say {float(shares.by_chances):.1%} of walks use up `{step.id}`, weights "
                f"say {float(shares.by_weights):.1%} end beyond `spent: {step.spent.text}`",
                "the minutes depend on both and can't be right with both",
                f"correct the `chance` of going back to `{step.id}`, the weights of the ends "
                f"beyond `{step.spent.text}`, or `at_most`",
            )


def _disagree(shares: SpentShares) -> bool:
    less, more = sorted((shares.by_chances, shares.by_weights))
    return more >= MIN_SHARE and more > MAX_RATIO * less
