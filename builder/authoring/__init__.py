"""Writes authors' files: a new shop, a new tree.

In: a folder, an ID. Out: files that pass the check as created; existing files stay as they are.
"""
