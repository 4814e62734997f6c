"""What rules share: the `Rule` record, the facts of a tree, suggestions, order, limits, links.

In: a `Tree` and the `Library`. Out: `Facts` for the rules, and what several of them compute.
"""
