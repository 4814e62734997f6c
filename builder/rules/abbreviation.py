"""An abbreviation in published text that the glossary doesn't explain.

Why: An apprentice who guesses what it means measures at the wrong part.

Wrong:

    answers:
      check: Does the XQM respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    answers:
      check: Does every module on the CAN respond?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write the words out, or add the abbreviation to `also` of an entry in `kb/glossary.yml`.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from datetime import date
from functools import cache, partial

from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import position_in, texts_of_article, texts_of_knowledge
from builder.rules.shared.rule import Facts, Family, Rule
from builder.trade.codes import CODE_PATTERN
from builder.trade.units import UNITS

RULE = Rule(
    name="abbreviation",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="An abbreviation that the glossary doesn't explain.",
)
CAPITALS = re.compile(r"[A-Z][A-Z0-9]")
SHORT = re.compile(r"(?<![\w/])[A-Z][A-Z0-9]*[A-Z][A-Z0-9]*(?!\w)")
CODE = re.compile(CODE_PATTERN)
# What tools have printed on them, and the signal words of the cautions.
WELL_KNOWN = frozenset({*UNITS, "OL", "OK", "AC", "DC", "LED", "USB"})
SIGNAL_WORDS = frozenset({"DANGER", "WARNING", "CAUTION", "NOTICE"})


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every unexplained abbreviation of a tree, at its first use."""
    yield from _unexplained(facts.texts, cache(partial(_explained, facts.library)))


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every unexplained abbreviation of an article or the knowledge."""
    explained = cache(partial(_explained, library))
    for article in library.how_tos.values():
        yield from _unexplained(texts_of_article(article), explained)
    yield from _unexplained(texts_of_knowledge(library), explained)


def _unexplained(
    texts: Iterable[Text], explained: Callable[[], frozenset[str]]
) -> Iterator[Finding]:
    seen: set[str] = set()
    for text in texts:
        for match in SHORT.finditer(text) if CAPITALS.search(text) else ():
            short = match.group()
            if short in seen or _is_well_known(short) or short in explained():
                continue
            seen.add(short)
            yield RULE.finding(
                position_in(text, match.start(), len(short)),
                f"the glossary doesn't explain `{short}`",
                "a tech who guesses what it means measures at the wrong part",
                "write the words out, or add it to `also` of an entry in kb/glossary.yml",
            )


def _is_well_known(short: str) -> bool:
    return short in WELL_KNOWN or short in SIGNAL_WORDS or bool(CODE.match(short))


def _explained(library: Library) -> frozenset[str]:
    """Return every abbreviation in the glossary."""
    terms = library.glossary.values()
    words = (words for term in terms for words in (term.id.upper(), term.term, *term.also))
    return frozenset(short for one in words for short in SHORT.findall(one))
