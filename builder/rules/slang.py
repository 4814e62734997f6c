"""A slang word where the proper term belongs, in published text. Symptom words are the customer's
own and don't count. Where a word means more than one thing, the hint asks which.

Why: "Reflash it" has meant programming, configuration and initialization, and each time someone
paid for the wrong one.

Wrong:

    battery:
      check: Is it a dead battery?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Right:

    battery:
      check: Is the battery discharged?
      results:
        - {result: yes, branch: repair}
        - {result: no, branch: all-good}

Fix: Write the term that the finding suggests; `kb/words.yml` is the list.
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
    summary="A slang word where the proper term belongs.",
)
WORD = re.compile(r"[^\W_]+(?:'[^\W_]+)*")
PUNCTUATION = punctuation + "–—…“”·→"
# By its only word or its last two, which are rarer than the first: the slang as the list has it,
# and with spaces only.
SlangIndex = Mapping[str | tuple[str, str], list[tuple[str, str]]]


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every slang word in the published text of a tree."""
    yield from _slang(facts.texts, facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every slang word in an article or the knowledge."""
    for article in library.how_tos.values():
        yield from _slang(list(texts_of_article(article)), library)
    yield from _slang(list(texts_of_knowledge(library)), library)


def _slang(texts: Sequence[Text], library: Library) -> Iterator[Finding]:
    candidates = _candidates("\n".join(texts), _index(tuple(library.words)))
    for text in texts if candidates else ():
        plain = _plain(text)
        for slang in candidates:
            for match in _pattern(slang).finditer(plain):
                words = text[match.start() : match.end()]
                if words == slang or not slang.isupper():  # capitals match only capitals
                    yield _finding(text, match.start(), words, library.words[slang])


def _candidates(text: str, index: SlangIndex) -> list[str]:
    """Return the slang that a text may have; most trees have none, and this test is fast."""
    plain = _spaced(text)
    words = [word.strip(PUNCTUATION) for word in plain.split(" ")]
    ends = [*index.keys() & set(words), *index.keys() & set(pairwise(words))]
    return sorted(slang for end in ends for slang, spaced in index[end] if spaced in plain)


@lru_cache(maxsize=2)
def _index(slangs: tuple[str, ...]) -> SlangIndex:
    index: dict[str | tuple[str, str], list[tuple[str, str]]] = defaultdict(list)
    for slang in slangs:
        words = WORD.findall(_plain(slang))
        if words:
            ends = words[0] if len(words) == 1 else (words[-2], words[-1])
            index[ends].append((slang, _spaced(slang)))
    return dict(index)


@lru_cache(maxsize=1000)
def _pattern(slang: str) -> re.Pattern[str]:
    """Return the pattern of a slang phrase: whole words with any whitespace between them."""
    words = r"\s+".join(map(re.escape, _plain(slang).split()))
    return re.compile(rf"(?<![\w'-]){words}(?![\w'-])")


def _spaced(text: str) -> str:
    """Return the words of a text with one space between them, also where it has `-` or `/`."""
    return " ".join(_plain(text).replace("-", " ").replace("/", " ").split())


def _plain(text: str) -> str:
    """Return the text in lowercase, of the same length, with one kind of apostrophe."""
    small = text.lower()
    return (small if len(small) == len(text) else text).replace("’", "'")


def _finding(text: Text, start: int, slang: str, word: Word) -> Finding:
    terms = " or ".join(f"`{term}`" for term in word.terms)
    hint = f"write {terms}" if len(word.terms) == 1 else f"write which you mean: {terms}"
    return RULE.finding(
        position_in(text, start, len(slang)),
        f"`{slang}` is slang",
        "people mean different things by it, and someone pays for the difference",
        hint,
    )
