"""Where a tree names its own steps, and other trees.

In: nothing. Out: the keys, for what compares or renames steps.
"""

import re

# Keys whose value, or whose items, name a step, another tree, or `tree#step`.
TO_STEPS = frozenset({"branch", "then", "spent", "cannot_test", "still_there", "after", "same_as"})
NAMES_INSIDE = frozenset({"verify", "proved_by"})  # as a word, or as the key of a map
QUOTED_STEP = re.compile(r"<([A-Za-z0-9_-]+)(?=[.>])")  # a reading of a step, quoted in a text
