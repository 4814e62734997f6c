"""A text for the customer that claims a test and quotes no reading.

Why: It is printed on every path, also on those where nobody tested anything.

Wrong:

    drive: with care
    why: It may stall.
    steps:
      belt:
        check: Is the belt tight?
        results: {yes: all-good, no: slipping}
      slipping:
        fix: Replace the belt
        cause: The belt slips
        weight: 1
        verify: [belt tight]
        tell: The battery was tested and is good. The belt slips.

Right:

    drive: with care
    why: It may stall.
    steps:
      belt:
        check: Is the belt tight?
        results: {yes: all-good, no: slipping}
      slipping:
        fix: Replace the belt
        cause: The belt slips
        weight: 1
        verify: [belt tight]
        tell: The belt slips.

Fix: Quote the reading, as `<step>`, or leave the claim out: the sheet prints what was measured.
"""

import re
from collections.abc import Iterator

from builder.model.ends import Fix
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="claim-without-reading",
    family=Family.EVIDENCE,
    severity=Severity.WARNING,
    summary="A text for the customer claims a test and quotes no reading.",
)
SENTENCE = re.compile(r"[^.!?]+")
CLAIM = re.compile(
    r"\b(?:tested|measured|checked|tests? (?:good|bad)|is good|are good|volts?)\b", re.I
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every sentence of `tell` that claims a test without a reading."""
    for step in facts.steps:
        if isinstance(step.body, Fix) and step.body.tell:
            for sentence in SENTENCE.findall(step.body.tell):
                claim = CLAIM.search(sentence)
                if claim and "<" not in sentence:
                    yield RULE.finding(
                        step.body.tell.at, f"`{claim[0]}` claims a test and quotes no reading",
                        "on some path to this fix it may not have been done",
                        "quote the reading, as `<step>`, or leave it out",
                    )  # fmt: skip
