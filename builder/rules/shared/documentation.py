"""The page of a rule, from its module's docstring.

In: the docstring of a rule's module. Out: `RulePage`. The docstring has five parts in this order:
what it finds (one paragraph), `Why:`, `Wrong:`, `Right:` (an indented block of YAML each) and
`Fix:`. A block is a whole file, several files each under a line such as `# kb/tools.yml`, or steps.
A test completes steps to a tree, adds the ends `repair` and `all-good` where they are named, and
proves that the wrong block gives the finding and the right one gives none.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import dedent

from builder.rules.catalog import RULES
from builder.rules.shared.rule import DocumentedRule, Rule

PARTS = re.compile(
    r"(?P<finds>.+?)\n+Why: (?P<why>.+?)\n+Wrong:\n+(?P<wrong>.+?)\n+Right:\n+(?P<right>.+?)\n+"
    r"Fix: (?P<fix>.+?)\s*",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class RulePage:
    """The documentation of a rule; the two examples are YAML, everything else is plain text."""

    rule: Rule
    finds: str
    why: str
    wrong: str
    right: str
    fix: str


def rule_page(rule: DocumentedRule) -> RulePage:
    """Read the page of a rule's module. Raises ValueError where a part is missing: our bug."""
    parts = PARTS.fullmatch(dedent(rule.__doc__ or ""))
    if parts is None:
        expected = "what it finds, Why:, Wrong:, Right: and Fix:, in this order"
        raise ValueError(f"the docstring of the rule {rule.RULE.name} must have {expected}")
    plain = {name: " ".join(parts[name].split()) for name in ("finds", "why", "fix")}
    blocks = {name: dedent(parts[name]).strip("\n") + "\n" for name in ("wrong", "right")}
    return RulePage(rule.RULE, **plain, **blocks)


def documented_rules() -> Iterator[RulePage]:
    """Yield the page of every rule, the text errors first."""
    return map(rule_page, RULES)
