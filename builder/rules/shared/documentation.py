"""The page of a rule, from its module's docstring.

In: the docstring of a rule's module. Out: `RulePage`. The docstring has five parts in this order:
what it finds (one paragraph), `Why:`, `Wrong:`, `Right:` (an indented block of YAML each) and
`Mend:`. A block is a whole file, several files each under a line such as `# kb/tools.yml`, or
steps; a test puts steps under a head of its own, adds the ends `repair` and `all-good` where they
are named, and proves that the wrong block gives the finding and the right one gives none.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from textwrap import dedent

from builder.rules.catalog import ALL
from builder.rules.shared.rule import Documented, Rule

PARTS = re.compile(
    r"(?P<finds>.+?)\n+Why: (?P<why>.+?)\n+Wrong:\n+(?P<wrong>.+?)\n+Right:\n+(?P<right>.+?)\n+"
    r"Mend: (?P<mend>.+?)\s*",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class RulePage:
    """What there is to say about a rule; the two examples are YAML, all else is plain text."""

    rule: Rule
    finds: str
    why: str
    wrong: str
    right: str
    mend: str


def documentation(rule: Documented) -> RulePage:
    """Read the page of a rule's module; one that lacks a part is our bug."""
    parts = PARTS.fullmatch(dedent(rule.__doc__ or ""))
    if parts is None:
        raise ValueError(f"the page of {rule.RULE.name} lacks one of its five parts")
    plain = {name: " ".join(parts[name].split()) for name in ("finds", "why", "mend")}
    blocks = {name: dedent(parts[name]).strip("\n") + "\n" for name in ("wrong", "right")}
    return RulePage(rule.RULE, **plain, **blocks)


def pages() -> Iterator[RulePage]:
    """Yield the page of every rule, the mistakes of text first."""
    return map(documentation, ALL)
