"""Text that YAML would lose without a word: ` #` in the middle of words, a comma in a phrase inside
braces, a lone `>` or `|`.

Why: The fuse number that was written never reaches the bay.

Wrong:

    belt:
      check: Fuse #12 whole
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: "Fuse #12 whole"
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Put the whole phrase in quotes. A comment has a blank after its `#`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="lost-text",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Text that YAML would lose without a word.",
)
