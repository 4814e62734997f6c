"""One file per rule, with its documentation; two literal tuples in `all.py` say which there are.

In: a `Tree` (or every tree in summary) and the `Library`. Out: `Finding`s.
"""

from builder.rules.judge import judge, judge_library

__all__ = ["judge", "judge_library"]
