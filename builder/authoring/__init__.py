"""Writes authors' files: a new shop, a new tree.

In: names. Out: text that checks clean from the first line, written where nothing stood.
"""
