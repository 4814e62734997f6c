"""An answer that stands for more than one thing, taken apart.

In: `gone, loose, oily, or glazed`. Out: `gone`, `loose`, `oily`, `glazed`: one of them was seen.
"""

import re

_ONE = re.compile(r"\bor (?:less|more|so|lower|higher|longer|older|newer)\b")
_PREFIX = re.compile(r"(?P<word>yes|no), (?!or )")


def answer_parts(answer: str) -> tuple[str, ...]:
    """Return what an answer may mean; nothing where it is one thing."""
    match = _PREFIX.match(answer)
    prefix = match[0] if match else ""
    rest = answer.removeprefix(prefix)
    if " or " not in rest or _ONE.search(rest):
        return ()
    parts = re.split(r",? or |, ", rest)
    return tuple(f"{prefix}{part}" for part in parts)
