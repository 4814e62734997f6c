"""Texts that quote readings, for a reader who must not see a gap.

In: a text whose quotes, `<step>` and `<step.reading>`, are filled as far as they were measured.
Out: the text without the sentences that still have one.
"""

import re

_SENTENCE = re.compile(r"(?<=[.!?])\s+")
_QUOTE = re.compile(r"<[^<>]+>")


def without_quotes(text: str) -> str:
    """Leave out every sentence with a quote that nobody measured."""
    return " ".join(one for one in _SENTENCE.split(text) if not _QUOTE.search(one))
