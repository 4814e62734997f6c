"""A tree as one table that a page and a terminal follow, and the walk that follows it.

In: a `Tree`, the library, and what happens on a job, event after event. Out: tables, screens and
records as plain lists and maps, ready for JSON; a simulated vehicle to practice on. The page's
script follows the same tables. DEVELOPERS.md has the whole under "The walk".
"""
