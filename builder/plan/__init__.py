"""The plan of a tree: its minutes, chances, step numbers, and the estimate options for each fix.

In: a `Tree` and the `Library`. Out: exact numbers; no I/O. A walk is one job's path through a tree,
loops included; a share is a fraction of all walks.
"""
