"""One file per rule, with its documentation; two literal tuples say which rules there are.

In: a `Tree` (or every tree in summary) and the `Library`. Out: `Finding`s.
"""
