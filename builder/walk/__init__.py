"""A tree as one table that a page and a terminal follow, and the following of it.

In: a `Tree`, and what is typed at the vehicle. Out: plain lists and maps, ready to be written as
JSON; and which result was found. `web/walk.js` follows the same table.
"""
