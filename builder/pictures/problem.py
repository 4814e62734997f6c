"""Why a picture can't be published.

In: returned by `drawings` and `photos`. Out: a finding of the reader, or of the build.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PictureProblem:
    """What is wrong with a picture, and what to do; where, if it is text."""

    message: str
    hint: str
    line: int = 1
    column: int = 1
