"""Misspelled words: the nearest known word.

In: a word that no tree knows, and the words that are known with how often each stands. Out: what
was likely meant, or nothing. Distance after Damerau and Levenshtein (restricted: a swap of two
neighbors counts one). The page does the same for what is typed there (`search-query.js`).
"""

from collections.abc import Container, Mapping

VOWELS = "aeiouy"


def edits_allowed(word: str) -> int:
    """None up to three letters, one from four to six, two beyond; digits are never guessed."""
    if len(word) < 4 or not word.isalpha():
        return 0
    return 1 if len(word) < 7 else 2


def edit_distance(one: str, other: str, limit: int) -> int:
    """Edits between two words: insert, leave out, replace, swap neighbors; `limit + 1` if more."""
    if abs(len(one) - len(other)) > limit:
        return limit + 1
    before: list[int] = []
    row = list(range(len(other) + 1))
    for i, letter in enumerate(one, start=1):
        before, above, row = row, before, [i]
        for j, against in enumerate(other, start=1):
            cost = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != against))
            if i > 1 and j > 1 and letter == other[j - 2] and one[i - 2] == against:
                cost = min(cost, above[j - 2] + 1)
            row.append(cost)
        if min(row) > limit:
            return limit + 1
    return min(row[-1], limit + 1)


def nearest_word(word: str, known: Mapping[str, int]) -> str | None:
    """The likeliest known word: fewest edits, same first letter, a usual slip, most used.

    People leave letters out and mix up vowels more often than they change or add others.

    A word that the shop never says (uses below 0) is meant only if it is one edit away.
    A word is never turned into one of another first letter by more than one edit, one of up to five
    letters not at all: `worse` is no misspelled `horse`.
    """
    best: tuple[int, bool, bool, int, str] | None = None
    limit = edits_allowed(word)
    for candidate, uses in known.items() if limit else ():
        is_other_start = candidate[0] != word[0]
        # One edit of the first letter leaves all from the third on as they are.
        if len(candidate) < 4 or (is_other_start and not candidate.endswith(word[2:])):
            continue
        allowed = min(limit, len(word) > 5) if is_other_start else limit
        allowed = min(allowed, 1) if uses < 0 else allowed
        edits = edit_distance(word, candidate, allowed)
        if edits <= allowed:
            other_letters = not is_usual_slip(word, candidate)
            order = (edits, is_other_start, other_letters, -uses, candidate)
            best = order if best is None or order < best else best
    return best[-1] if best else None


def is_usual_slip(word: str, candidate: str) -> bool:
    """Whether letters were only left out of a word, or only its vowels are others."""
    letters = iter(candidate)
    return all(letter in letters for letter in word) or _consonants(word) == _consonants(candidate)


def _consonants(word: str) -> str:
    return "".join(letter for letter in word if letter not in VOWELS)


def split_run_together(word: str, known: Container[str]) -> tuple[str, str] | None:
    """Two known words typed as one, the longest first part that works; each of three and more."""
    for cut in range(len(word) - 3, 2, -1):
        if word[:cut] in known and word[cut:] in known:
            return word[:cut], word[cut:]
    return None
