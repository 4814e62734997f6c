"""Text to words that can be compared: folded, stemmed, and with their "no" kept.

In: what an author wrote or a person typed. Out: words (`won't crank` is `wont`, `crank`) and tokens
(`!crank`). The page takes a query apart in the same way (`search-words.js`), with the endings from
here; the tests run one set of texts through both.
"""

import re
import unicodedata
from collections.abc import Iterable, Sequence
from functools import cache

from builder.find.common_words import (
    MEASURES,
    NEGATIONS,
    NUMBER_WORDS,
    ORDINARY_WORDS,
    STOP_WORDS,
)

# What comes off the end of a word, in this order, and what is put in its place: plural; -ing, -ed,
# -ly, -ness, -ment; -ion; our for or; -e; -in for -ing; a doubled last letter. A light stemmer of
# our own for English: the stem need not be a word. `speed` and `need` are no past tense, `string`
# no `-ing`.
ENDINGS = (
    (r"(mile)s?", "age"),  # or they would be the MIL
    (r"(.*)ies", "y"),
    (r"(.*[^sui])s", ""),
    (r"(.*[aeiouy].*)(?:(?<=.{3})(?:ing|(?<!e)ed)|(?<=.{4})(?:ly|ness|ment))", ""),
    (r"(.{3,}[st])ion", ""),
    (r"(.{2,}o)ur", "r"),
    (r"(.{3,})e", ""),
    (r"(.*[aeiouy].*[^aeiou])in", ""),  # `workin`; behind -e, so that `engin` is an engine still
    (r"(.{2,}(.))\2", ""),
)
_ENDINGS = tuple((re.compile(pattern), instead) for pattern, instead in ENDINGS)
_APOSTROPHES = re.compile("['’‘`´]")
# A unit that is typed on to its number (`65mph`) is a word by itself.
UNITS = (
    r"(?<![a-z0-9])([0-9]+)(mph|kmh|kph|psi|v|volts?|amps?|ohms?|mi|miles?|km|mins?|hrs?|k|kw|hz"
    r"|rpm|mm|mv|ms)(?![a-z0-9])"
)
_UNITS = re.compile(UNITS)
_LETTERS = re.compile(r"\b([a-z])/([a-z])\b")
_WORD = re.compile(r"[^\W_]+")


def fold_text(text: str) -> str:
    """Lower case, no accents, no apostrophes; letters about a slash are one word (`a/c`).

    A unit is no part of its number.
    """
    plain = _APOSTROPHES.sub("", text)
    if not plain.isascii():
        marked = unicodedata.normalize("NFKD", plain)
        plain = "".join(letter for letter in marked if unicodedata.category(letter)[0] != "M")
    return _UNITS.sub(r"\1 \2", _LETTERS.sub(r"\1\2", plain.lower()))


def split_words(text: str) -> list[str]:
    """The words of a text as they would be typed, folded; hyphens and marks part words."""
    return _WORD.findall(fold_text(text))


@cache
def stem_word(word: str) -> str:
    """Take off the endings that a search should not mind.

    `z` is written `s` so that both spellings meet. Words of three letters and words with digits
    stay whole.
    """
    if len(word) < 4 or not word.isalpha():
        return word
    stem = word.replace("z", "s")
    for ending, instead in _ENDINGS:
        if match := ending.fullmatch(stem):
            stem = match[1] + instead
    return stem


ORDINARY_STEMS = frozenset(map(stem_word, ORDINARY_WORDS))


def stem_words(words: Iterable[str]) -> list[str]:
    """Stem words and bind each "no" to the next word that says something: `!crank`.

    Stop words stay in their places; `drop_stop_words` takes them out. Distances and times are left
    out.
    """
    tokens: list[str] = []
    negated = False
    for word in _without_measures([*words]):
        if word in NEGATIONS:
            negated = True
        elif word in STOP_WORDS:
            tokens.append(word)
        else:
            tokens.append("!" + stem_word(word) if negated else stem_word(word))
            negated = False
    return tokens


def _without_measures(words: Sequence[str]) -> list[str]:
    """Words without each number that a unit of distance or time follows, and that unit."""
    behind = (*words[1:], "")
    starts = {
        at
        for at, (word, unit) in enumerate(zip(words, behind, strict=False))
        if (word.isdecimal() or word in NUMBER_WORDS) and unit in MEASURES
    }
    return [word for at, word in enumerate(words) if not {at, at - 1} & starts]


def drop_stop_words(tokens: Iterable[str]) -> tuple[str, ...]:
    """Tokens without stop words, each once, in their order."""
    return tuple(dict.fromkeys(token for token in tokens if token not in STOP_WORDS))


def opposite(token: str) -> str:
    """The same token with the opposite meaning."""
    return token[1:] if token.startswith("!") else "!" + token


def without_no(token: str) -> str:
    """The same token without its "no"."""
    return token.removeprefix("!")
