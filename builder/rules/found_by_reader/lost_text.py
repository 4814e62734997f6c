"""Text that YAML drops without a word: ` #` in the middle of words, a comma in a phrase inside
braces, a lone `>` or `|`.

Why: The fuse number you wrote never reaches the bay.

Wrong:

    belt:
      check: Is fuse #12 good?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    belt:
      check: "Is fuse #12 good?"
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Put the whole phrase in quotes. A comment has a space after its `#`.
"""

from builder.model.finding import Severity
from builder.rules.shared.rule import Family, Rule

RULE = Rule(
    name="lost-text",
    family=Family.TEXT,
    severity=Severity.ERROR,
    summary="Text that YAML drops without a word.",
)
