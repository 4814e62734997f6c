"""A tree as one table that a page and a terminal follow, and the code that follows it.

In: a `Tree`, and what a tech types in at the vehicle. Out: plain lists and maps, ready for JSON;
and the result that the readings give. `web/follow.js` follows the same table.
"""
