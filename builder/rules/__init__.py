"""One file per rule, with its documentation; literal tuples in `all.py` say which there are.

In: a `Tree` (or every tree in summary) and the `Library`. Out: `Finding`s; and the page of a rule.
"""

from builder.rules.documentation import RulePage, documentation, pages
from builder.rules.judge import judge, judge_library

__all__ = ["RulePage", "documentation", "judge", "judge_library", "pages"]
