"""A cause without what was not checked: nobody claims power on a paper that nobody measured.

In: `The fuel pump has power and makes low pressure`. Out: `The fuel pump makes low pressure`.
"""

import re

_FEED = r"has (?:12 V |good )?(?:power|ground)(?: and ground)?"
_CLAIM = re.compile(
    rf" (?:{_FEED}|is commanded(?: on)?(?:,? powered)?),? (?:and|but)(?= )| with power on it"
)


def without_claims(cause: str) -> str:
    """Leave out that a part has power, ground, or a command."""
    return _CLAIM.sub("", cause)
