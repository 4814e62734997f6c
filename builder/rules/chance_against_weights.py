"""A chance of going back and the weights of the ends that disagree, more than twofold, on how often
a step is used up. With a chance c of the one way back, and `at_most: n`, c to the power of n of the
walks come to the step once too often and leave it by `spent`; the weights of the ends beyond
`spent` say it once more. A way back without a chance counts as never taken. Nothing is said where
both are below one walk in a hundred.

Why: The minutes that the office plans with rest on both, and cannot be right with both.

Wrong:

    bleed:
      check: Bleed the brakes, try the pedal
      at_most: 2
      spent: repair
      results:
        - {result: firm, branch: bled}
        - {result: still soft, branch: bleed, chance: 0.1}
    bled:
      fix: Renew the fluid
      cause: Air in the fluid
      weight: 1
      verify: [pedal firm, engine running]

Right:

    bleed:
      check: Bleed the brakes, try the pedal
      at_most: 2
      spent: repair
      results:
        - {result: firm, branch: bled}
        - {result: still soft, branch: bleed, chance: 0.6}
    bled:
      fix: Renew the fluid
      cause: Air in the fluid
      weight: 2
      verify: [pedal firm, engine running]

Fix: State how often the loop is really taken and how often each end occurs, or change `at_most`.
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
MOST_APART = 2  # times
LEAST = Fraction(1, 100)  # of all walks; the minutes do not rest on less


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every step on whose `spent` chances and weights disagree."""
    if facts.tree.broken or not facts.tree.steps:
        return  # what is missing in a tree moves all shares
    for one in spent_shares(facts.tree):
        step = facts.tree.steps[one.step]
        if step.spent and _apart(one):
            yield RULE.finding(
                step.spent.text.at,
                f"by its chances {_percent(one.by_chances)} of the walks use up `{step.id}`, by the"
                f" weights {_percent(one.by_weights)} end beyond `spent: {step.spent.text}`",
                "the minutes rest on both, and cannot be right with both",
                f"change the `chance` of coming back to `{step.id}`, the weight of the ends beyond"
                f" `{step.spent.text}`, or `at_most`, so that they say the same",
            )


def _apart(one: SpentShares) -> bool:
    less, more = sorted((one.by_chances, one.by_weights))
    return more >= LEAST and more > MOST_APART * less


def _percent(share: Fraction) -> str:
    return f"{float(share):.1%}".replace("%", " %")
