"""One file per rule, with its documentation; the list in `catalog.py` names them all.

In: a `Tree` (or the listings of every tree) and the `Library`. Out: `Finding`s; the page of a rule.

`shared/` holds what several rules use; `found_by_reader/` holds only the pages of text errors,
which the reader finds before any rule runs.
"""
