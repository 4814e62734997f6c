"""The cache of a shop: one SQLite file in the user's cache folder.

In: rows of bytes. Out: the same rows, if they are undamaged and this version of the code wrote
them. It can be deleted at any time; where it can't be used, the work is done again.
"""
