"""Pages of the mistakes of text, which the reader finds; one module a rule, as for all others.

In: nothing. Out: each module has its `RULE` and its page; `all.py` lists them.
"""
