"""Why a file wasn't written.

In: nothing. Out: `NotWritten`, which the command line prints.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class NotWritten:
    """What is in the way, and what to do instead."""

    message: str
    hint: str
