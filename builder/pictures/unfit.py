"""Why a file is no picture that can be published.

In: made by `drawings` and `photos`. Out: a finding of the reader, or of the build.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Unfit:
    """What is wrong with a picture, and what to do; where, if it is text."""

    message: str
    hint: str
    line: int = 1
    column: int = 1
