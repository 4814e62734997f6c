"""One file a command: its flags, its pipeline in a few lines, and what it prints.

In: arguments. Out: an exit status; files and text as the command promises.
"""

import gc

# Trees are thousands of small values without cycles; to look for cycles among them at the usual
# pace took a fifth of a build. Set here, before the commands are imported: it holds for that too,
# and for the processes that they start.
gc.set_threshold(1_000_000, 50, 50)
