"""A phrase that the shop doesn't write. `house words` in `kb/words.yml` says what to write instead.

Symptom words are the customer's own and don't count, nor do the words of limits in `result:`.

Why: A tech who has to read a line twice with greasy hands reads the next one not at all.

Wrong:

    # kb/words.yml
    house words:
      minus clamp: negative terminal
    # trees/charging/case.yml
    steps:
      clamp:
        check: Is the minus clamp tight?
        results: {yes: all-good, no: repair}

Right:

    # kb/words.yml
    house words:
      minus clamp: negative terminal
    # trees/charging/case.yml
    steps:
      clamp:
        check: Is the negative terminal tight?
        results: {yes: all-good, no: repair}

Fix: Write what the finding suggests, or delete the line from `kb/words.yml`.
"""

from collections.abc import Iterator, Sequence
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import (
    texts_of_article,
    texts_of_knowledge,
)
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.word_matches import word_matches

RULE = Rule(
    name="house-word",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A phrase that the shop doesn't write.",
)
WHY = "the shop says it another way, so the tech reads it twice"


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every such phrase in the published text of a tree."""
    yield from _phrases(facts.texts, facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every such phrase in an article or the knowledge."""
    if library.house_words:
        for article in library.how_tos.values():
            yield from _phrases(list(texts_of_article(article)), library)
        yield from _phrases(list(texts_of_knowledge(library)), library)


def _phrases(texts: Sequence[Text], library: Library) -> Iterator[Finding]:
    for match in word_matches(texts, library.house_words):
        terms = " or ".join(f"`{term}`" for term in match.entry.terms)
        yield RULE.finding(match.at, f"`{match.words}` isn't how the shop says it", WHY,
                           f"write {terms}")  # fmt: skip
