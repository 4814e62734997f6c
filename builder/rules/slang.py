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

Mend: Write the term that the finding offers; `kb/words.yml` is the list.
"""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from functools import lru_cache

from builder.model.finding import Finding, Severity
from builder.model.knowledge import Word
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.published import place_in, texts_of, texts_of_article
from builder.rules.rule import Facts, Rule

RULE = Rule(
    name="slang",
    family="words",
    severity=Severity.WARNING,
    summary="A word of the bay where the proper term belongs.",
)
WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
Index = Mapping[str, list[tuple[int, str]]]  # by first word: how many words, and the slang


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every word of the bay in the published text of a tree."""
    yield from _slang(texts_of(facts), facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every word of the bay in an article."""
    for article in library.how_tos.values():
        yield from _slang(texts_of_article(article), library)


def _slang(texts: Iterable[Text], library: Library) -> Iterator[Finding]:
    index = _index(tuple(library.words))
    for text in texts:
        words = list(WORD.finditer(text))
        for at, first in enumerate(words):
            for count, slang in index.get(_plain(first.group()), ()):
                if at + count <= len(words):
                    start, end = first.start(), words[at + count - 1].end()
                    said = text[start:end]
                    if _is_said(said, slang):
                        yield _finding(text, start, said, library.words[slang])


@lru_cache(maxsize=2)
def _index(slangs: tuple[str, ...]) -> Index:
    found: dict[str, list[tuple[int, str]]] = defaultdict(list)
    for slang in slangs:
        words = [_plain(match.group()) for match in WORD.finditer(slang)]
        if words:
            found[words[0]].append((len(words), slang))
    return dict(found)


def _plain(text: str) -> str:
    return text.lower().replace("’", "'")


def _is_said(said: str, slang: str) -> bool:
    """Whether words are this slang; what is written in capitals is meant in capitals only."""
    return said == slang if slang.isupper() else _plain(" ".join(said.split())) == _plain(slang)


def _finding(text: Text, start: int, said: str, word: Word) -> Finding:
    terms = " or ".join(f"`{term}`" for term in word.terms)
    hint = f"write {terms}" if len(word.terms) == 1 else f"say which is meant: {terms}"
    return RULE.finding(
        place_in(text, start, len(said)),
        f"`{said}` is a word of the bay",
        "not everybody means the same by it, and somebody pays for the difference",
        hint,
    )
