"""Whether one name denies what another says: the last one that a hint may offer.

In: two names or phrases. Out: yes or no. `above spec` is spelled like `below spec`, and `no gas`
like `gas`.
"""

import re
from functools import lru_cache

NEGATION = re.compile(r"\b(?:un(?![dit])|dis(?=connect|able|arm)|(?:not?|without|never)\b)")
OPPOSITES = (
    {"on", "off"}, {"running", "off"}, {"open", "closed"}, {"raised", "ground"}, {"in", "out"},
    {"straight", "turned"}, {"above", "below"}, {"most", "least"}, {"below", "least"},
    {"above", "most"}, {"high", "low"}, {"good", "bad"}, {"left", "right"}, {"front", "rear"},
    {"upper", "lower"}, {"inner", "outer"}, {"new", "used"}, {"power", "ground"}, {"hot", "cold"},
)  # fmt: skip


def is_opposite(one: str, other: str) -> bool:
    """Whether one of two says what the other denies."""
    if bool(NEGATION.search(spaced_words(one))) != bool(NEGATION.search(spaced_words(other))):
        return True
    first, second = words_of_name(one), words_of_name(other)
    return any(first & pair and second & pair and not first & second & pair for pair in OPPOSITES)


def words_of_name(text: str) -> frozenset[str]:
    """Return the words of a name or a phrase in small letters."""
    return frozenset(spaced_words(text).split())


@lru_cache(maxsize=4096)  # each text in free words is held against the same states
def spaced_words(text: str) -> str:
    """Return the words of a name or a phrase in small letters, with one space between."""
    return re.sub(r"[^a-z0-9<>]+", " ", text.casefold()).strip()
