"""An answer in words that stand alone on paper, where nobody has the menu it was picked from.

In: an answer, and all answers of the check. Out: of one that only says what it isn't, what that is:
`none of: misfire; too lean`; beside a `yes` alone, the no that it implies: `no, refused`.
"""

import re
from collections.abc import Sequence

_REST = re.compile(
    r"(?:anything else|any other(?:,? or none)?|other or none|none or others|neither|"
    r"none of (?:these|them|it))"
)
_EITHER = re.compile(r"(?P<one>[^,]+?),? or (?P<other>[^,]+)")
_OPEN = re.compile(r"(?:yes|no|not|none|unknown|unsure)\b")


def is_rest(answer: str) -> bool:
    """Whether an answer covers what the other answers leave, and says nothing else."""
    return bool(_REST.fullmatch(answer))


def plain_answer(answer: str, answers: Sequence[str]) -> str:
    """Write an answer for those who don't see the others."""
    if "yes" in answers:
        other = "another answer" if is_rest(answer) else answer
        is_third = "no" in answers and not is_rest(answer)  # it stands beside a plain no
        return answer if is_third or _OPEN.match(answer) else f"no, {other}"
    others = [one for one in answers if not is_rest(one)]
    if not is_rest(answer) or not others or "both sides" in others:
        return answer
    two = _EITHER.fullmatch(others[0]) if len(others) == 1 else None
    return f"neither {two['one']} nor {two['other']}" if two else f"none of: {'; '.join(others)}"
