"""The tree as one table that a page and a terminal follow.

In: a `Tree`. Out: plain lists and maps, ready to be written as JSON.
"""
