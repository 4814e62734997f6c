"""One file a command: its flags, its pipeline in a few lines, and what it prints.

In: arguments. Out: an exit status; files and text as the command promises.
"""
