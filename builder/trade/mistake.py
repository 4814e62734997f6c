"""What a function of the trade returns when its input makes no sense.

In: nothing. Out: `Mistake`, a value and never an exception, so that the caller can turn it into
a finding on the author's line or into a sentence beside a form's field.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Mistake:
    """Input that makes no sense, in words for its author."""

    message: str  # what is wrong and why it matters
    instead: str | None = None  # text that would be right, when there is one obvious choice
    at: int = 0  # where in the text it starts, counted in characters from 0
    length: int = 1  # how many characters it covers
