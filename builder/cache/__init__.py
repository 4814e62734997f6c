"""What one run leaves for the next: a single SQLite file for each shop, in the user's cache folder.

In: rows of bytes. Out: the same rows, as long as they are whole and our own code has written them.
It is only a cache: it may be deleted at any time, and where it can't be used the work is done anew.
"""
