"""Text to words that can be compared: folded, stemmed, and with their "no" kept.

In: what an author wrote or a person typed. Out: surfaces (`won't crank` is `wont`, `crank`) and
tokens (`!crank`). `web/search-words.js` does the same, function by function, and one table
of cases holds the two together.
"""

import re
import unicodedata
from collections.abc import Iterable, Sequence
from functools import cache


def _list(words: str) -> frozenset[str]:
    return frozenset(words.split())


STOP = _list(
    """a about after again also always am an and are around as at be been before being bit but
    by came car cars client come comes coming could customer did do does doing done during
    even ever fine for from get gets getting go goes going gone got had has have having he
    her here his how i if in into is it its ive just keep keeps kept little longer may me
    mine my near need needs now of ok okay on only onto or our please properly quite really
    said says she should since so some stay stayed stays still suddenly than that the their
    them then there these they this those through to too truck under until up us van vehicle
    vehicles very was we well were what when whenever where which while who why will with
    would yet you your"""
)
NEGATORS = _list(
    """aint arent cannot cant couldnt didnt doesn doesnt dont dosent dosnt hasnt havent isnt neither
    never no non nor not unable wasnt werent without wont wouldnt"""
)
_APOSTROPHES = re.compile("['’‘`´]")
_WORD = re.compile(r"[^\W_]+")
_VOWEL = re.compile("[aeiouy]")


def folded(text: str) -> str:
    """Lower case, no accents, no apostrophes."""
    plain = unicodedata.normalize("NFKD", _APOSTROPHES.sub("", text)).lower()
    bare = "".join(sign for sign in plain if unicodedata.category(sign)[0] != "M")
    return re.sub(r"\ba/c\b", "ac", bare)


def surfaces(text: str) -> list[str]:
    """The words of a text as they would be typed, folded; hyphens and signs part words."""
    return _WORD.findall(folded(text))


@cache
def stem(word: str) -> str:
    """Take off the endings that a search should not mind; the rest need not be a word.

    An English light stemmer of our own: plural, -ing, -ed, -ly, -ness, -ment, -ion, -e, and a
    doubled last letter; `z` is written `s` so that both spellings meet. Words of three letters and
    words with figures stay whole.
    """
    if len(word) < 4 or not word.isalpha():
        return word
    word = _without_plural(word.replace("z", "s"))
    word = _without_ending(word)
    if len(word) > 4 and word.endswith("our"):
        word = word[:-3] + "or"
    if len(word) > 3 and word.endswith("e"):
        word = word[:-1]
    if len(word) > 3 and word[-1] == word[-2]:
        word = word[:-1]
    return word


def _without_plural(word: str) -> str:
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word[:-1]
    return word


def _without_ending(word: str) -> str:
    """Take off one ending if enough of the word is left; `speed` and `need` are no past tense."""
    for ending, rest in (("ing", 3), ("ed", 3), ("ly", 4), ("ness", 4), ("ment", 4)):
        stays = word[: -len(ending)]
        if word.endswith(ending) and len(stays) >= rest and _VOWEL.search(stays):
            return word if word.endswith("eed") else stays
    if word.endswith(("sion", "tion")) and len(word) > 6:
        return word[:-3]
    return word


def tokens(words: Iterable[str]) -> list[str]:
    """Stem surfaces and bind each "no" to the next word that says something: `!crank`.

    Stop words stay in their places, for phrases such as "on and off"; `content` drops them.
    """
    made: list[str] = []
    negated = False
    for word in words:
        if word in NEGATORS:
            negated = True
        elif word in STOP:
            made.append(word)
        else:
            made.append("!" + stem(word) if negated else stem(word))
            negated = False
    return made


def content(found: Sequence[str]) -> list[str]:
    """Tokens without stop words, each once, in their order."""
    return list(dict.fromkeys(token for token in found if token not in STOP))


def flipped(token: str) -> str:
    """The same token with the opposite meaning."""
    return token[1:] if token.startswith("!") else "!" + token
