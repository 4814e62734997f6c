"""A word of the bay where the proper term belongs, in text that is published. Symptom words are the
customer's own and are left alone. Some words mean more than one thing; then it is asked which.

Why: "Reflash it" has been taken for programming, for configuration and for initialisation, and each
time somebody paid for the wrong one.

Wrong:

    battery:
      check: Is it a dead battery
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Right:

    battery:
      check: Is the battery flat
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Fix: Write the term that the finding offers; `kb/words.yml` is the list.
"""

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from functools import lru_cache
from itertools import pairwise
from string import punctuation

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Word
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import position_in, texts_of_article, texts_of_knowledge
from builder.rules.shared.rule import Facts, Family, Rule

RULE = Rule(
    name="slang",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A word of the bay where the proper term belongs.",
)
WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)*")
SIGNS = punctuation + "–—…“”·→"
# By its only word or its last two, which are rarer than the first: the slang as the list has it,
# and with blanks alone.
Index = Mapping[str | tuple[str, str], list[tuple[str, str]]]


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every word of the bay in the published text of a tree."""
    yield from _slang(facts.texts, facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every word of the bay in an article."""
    for article in library.how_tos.values():
        yield from _slang(list(texts_of_article(article)), library)
    yield from _slang(list(texts_of_knowledge(library)), library)


def _slang(texts: Sequence[Text], library: Library) -> Iterator[Finding]:
    said = _said("\n".join(texts), _index(tuple(library.words)))
    for text in texts if said else ():
        plain = _plain(text)
        for slang in said:
            for match in _pattern(slang).finditer(plain):
                words = text[match.start() : match.end()]
                if words == slang or not slang.isupper():  # capitals are meant in capitals only
                    yield _finding(text, match.start(), words, library.words[slang])


def _said(text: str, index: Index) -> list[str]:
    """Return the slang that a text may hold; most trees hold none, and this look is a quick one."""
    plain = _parted(text)
    words = [word.strip(SIGNS) for word in plain.split(" ")]
    ends = [*index.keys() & set(words), *index.keys() & set(pairwise(words))]
    return sorted(slang for end in ends for slang, parted in index[end] if parted in plain)


@lru_cache(maxsize=2)
def _index(slangs: tuple[str, ...]) -> Index:
    found: dict[str | tuple[str, str], list[tuple[str, str]]] = defaultdict(list)
    for slang in slangs:
        words = WORD.findall(_plain(slang))
        if words:
            ends = words[0] if len(words) == 1 else (words[-2], words[-1])
            found[ends].append((slang, _parted(slang)))
    return dict(found)


@lru_cache(maxsize=1000)
def _pattern(slang: str) -> re.Pattern[str]:
    """Return the form of a slang: whole words, with any blanks between them."""
    words = r"\s+".join(map(re.escape, _plain(slang).split()))
    return re.compile(rf"(?<![\w'-]){words}(?![\w'-])")


def _parted(text: str) -> str:
    """Return the words of a text with one blank between them, also where it has `-` or `/`."""
    return " ".join(_plain(text).replace("-", " ").replace("/", " ").split())


def _plain(text: str) -> str:
    """Return the text in small letters, sign for sign, with one kind of apostrophe."""
    small = text.lower()
    return (small if len(small) == len(text) else text).replace("’", "'")


def _finding(text: Text, start: int, said: str, word: Word) -> Finding:
    terms = " or ".join(f"`{term}`" for term in word.terms)
    hint = f"write {terms}" if len(word.terms) == 1 else f"say which is meant: {terms}"
    return RULE.finding(
        position_in(text, start, len(said)),
        f"`{said}` is a word of the bay",
        "not everybody means the same by it, and somebody pays for the difference",
        hint,
    )
