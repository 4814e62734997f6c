"""A fix that replaces something, has hours, and names no part, where another fix of the tree has a
price for that part, or all others that replace something name theirs.

Why: The customer signs for the labor alone, and the part comes on top.

Wrong:

    belt:
      check: Is the belt cracked?
      results: {yes: belt-fix, no: pulley-fix}
    belt-fix:
      fix: Replace the belt and the pulley
      cause: The belt is cracked
      weight: 1
      hours: 0.8
      verify: [no squeal]
    pulley-fix:
      fix: Replace the pulley
      cause: The pulley is worn
      weight: 1
      hours: 0.5
      parts: [{part: pulley, price: 35}]
      verify: [no squeal]

Right:

    belt:
      check: Is the belt cracked?
      results: {yes: belt-fix, no: pulley-fix}
    belt-fix:
      fix: Replace the belt
      cause: The belt is cracked
      weight: 1
      hours: 0.8
      parts: [{part: belt, price: 30}]
      verify: [no squeal]
    pulley-fix:
      fix: Replace the pulley
      cause: The pulley is worn
      weight: 1
      hours: 0.5
      parts: [{part: pulley, price: 35}]
      verify: [no squeal]

Fix: Name the part and its price under `parts`, or the module under `replaces`.
"""

import re
from collections.abc import Iterator

from builder.model.ends import Fix, Part
from builder.model.finding import Finding, Severity
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="no-price",
    family=Family.UPKEEP,
    severity=Severity.WARNING,
    summary="A fix that replaces something and names no part.",
)
REPLACES = re.compile(r"^replace (?:the |both |all )?", re.IGNORECASE)
MANY = 3  # fixes of a tree that replace something


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for a fix without the part that its words replace.

    Another fix has a price for the same part, or all others that replace something name theirs.
    """
    fixes = [(step, step.body) for step in facts.steps if isinstance(step.body, Fix)]
    priced = {str(part.part): part for _, fix in fixes for part in fix.parts if part.price}
    replacing = [(step, fix) for step, fix in fixes if REPLACES.match(step.text)]
    without = [(step, fix) for step, fix in replacing if fix.hours and not _sells(fix)]
    is_alone = len(without) == 1 and len(replacing) > MANY
    for step, _ in without:
        words = REPLACES.sub("", step.text)
        same = next((part for name, part in priced.items() if name in words), None)
        if same or (priced and is_alone):
            yield RULE.finding(
                step.text.at,
                f"`{step.text}` has hours, and no part under `parts`",
                "the customer signs for the labor alone, and the part comes on top",
                _hint(words, same),
            )


def _sells(fix: Fix) -> bool:
    return bool(fix.parts or fix.replaces or fix.options)


def _hint(words: str, same: Part | None) -> str:
    """Take the price from another fix of the same part, where the tree has one."""
    if same and same.price:
        low, high = f"{same.price.low:f}", f"{same.price.high:f}"
        price = low if low == high else f"{low} to {high}"
        return f"another fix has it: `parts: [{{part: {same.part}, price: {price}}}]`"
    return f"add its price: `parts: [{{part: {words.split(',')[0]}, price: ...}}]`"
