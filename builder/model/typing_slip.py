"""Whether a word that doesn't exist is one that does, but for a slip of the fingers.

In: a name as typed, and those that the author may have meant. Out: yes or no, and the edit that
writes the right one. A yes must be sure, as it changes the file without asking: `horn-1` isn't
`horn-2`, and `lf` isn't `rf`.
"""

import re
from collections.abc import Iterable

from builder.model.finding import Edit, edit_of
from builder.model.text import Text

SHORT = 3  # letters; among words this short one letter makes another word: on, off, hot, not, low
SEPARATORS = re.compile(r"[\s/_-]+")


def slip_of(typed: str, known: Iterable[str]) -> str | None:
    """Return the one name of which this is a slip."""
    meant = [name for name in map(str, known) if is_typing_slip(typed, name)]
    return meant[0] if len(meant) == 1 else None


def edit_of_slip(typed: Text, known: Iterable[str]) -> Edit | None:
    """Return the edit that writes the one name of which this is a slip."""
    meant = slip_of(typed, known)
    return edit_of(typed, meant) if meant else None


def is_typing_slip(typed: str, meant: str) -> bool:
    """Whether two names differ in nothing but case, hyphens, or one slip in each longer word.

    The first letter has to be right: people seldom miss it (found in studies of misspelled words,
    from memory), and another first letter often makes another word, such as seat and heat.
    """
    words, others = (SEPARATORS.split(name.strip().casefold()) for name in (typed, meant))
    if "".join(words) == "".join(others):
        return True
    return len(words) == len(others) and all(map(_is_same_word, words, others))


def _is_same_word(typed: str, meant: str) -> bool:
    """Whether at most one letter is missing, added, wrong or swapped with its neighbor."""
    if typed == meant:
        return True
    if max(len(typed), len(meant)) <= SHORT or typed[:1] != meant[:1]:
        return False
    if re.sub(r"\D", "", typed) != re.sub(r"\D", "", meant):
        return False
    while typed and meant and typed[0] == meant[0]:
        typed, meant = typed[1:], meant[1:]
    while typed and meant and typed[-1] == meant[-1]:
        typed, meant = typed[:-1], meant[:-1]
    return max(len(typed), len(meant)) <= 1 or (len(typed) == 2 and typed == meant[::-1])
