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

from collections.abc import Iterator, Sequence
from datetime import date

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import texts_of_article, texts_of_knowledge
from builder.rules.shared.rule import Facts, Family, Rule
from builder.rules.shared.word_matches import WordMatch, word_matches

RULE = Rule(
    name="slang",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A slang word where the proper term belongs.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every slang word in the published text of a tree."""
    yield from _slang(facts.texts, facts.library)


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every slang word in an article or the knowledge."""
    for article in library.how_tos.values():
        yield from _slang(list(texts_of_article(article)), library)
    yield from _slang(list(texts_of_knowledge(library)), library)


def _slang(texts: Sequence[Text], library: Library) -> Iterator[Finding]:
    yield from (_finding(match) for match in word_matches(texts, library.words))


def _finding(match: WordMatch) -> Finding:
    terms = " or ".join(f"`{term}`" for term in match.entry.terms)
    one = len(match.entry.terms) == 1
    hint = f"write {terms}" if one else f"write which you mean: {terms}"
    return RULE.finding(
        match.at,
        f"`{match.words}` is slang",
        "people mean different things by it, and someone pays for the difference",
        hint,
    )
