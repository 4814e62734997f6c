"""An answer that only says what it isn't, in words that stand alone on paper.

In: `none of these`, and the other answers of the check. Out: `none of: misfire; system too lean`.
Beside its menu `anything else` is clear; on a repair order nobody has the menu.
"""

import re
from collections.abc import Iterable

_REST = re.compile(
    r"(?:anything else|any other(?:,? or none)?|other or none|none or others|neither|"
    r"none of (?:these|them|it))"
)


def is_rest(answer: str) -> bool:
    """Whether an answer covers what the other answers leave, and says nothing else."""
    return bool(_REST.fullmatch(answer))


def rest_words(answer: str, answers: Iterable[str]) -> str:
    """Name what it isn't; any other answer is kept."""
    others = [other for other in answers if not is_rest(other)]
    is_of_sides = "both sides" in others  # `neither` says by itself where it glows
    if not is_rest(answer) or not others or is_of_sides or others[0] == "yes":
        return answer
    return f"none of: {'; '.join(others)}"
