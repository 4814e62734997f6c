"""Why nothing was written.

In: made by the commands that write authors' files. Out: words for the command line.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Refused:
    """What stands in the way, and what to do instead."""

    message: str
    hint: str
