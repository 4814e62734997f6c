"""One file per rule, with its documentation; the literal lists in `catalog.py` name them all.

In: a `Tree` (or the listings of every tree) and the `Library`. Out: `Finding`s; the page of a rule.

`shared/` holds the facts that several rules ask for; `found_by_reader/` holds pages only, for
mistakes of text that the reader has found before any rule runs.
"""
