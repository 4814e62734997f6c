"""Pages of the text errors, which the reader finds; one module per rule, as for all others.

In: nothing. Out: each module has its `RULE` and its page; `catalog.py` lists them.
"""
