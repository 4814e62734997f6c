"""A character that the font of the charts and prints doesn't have: in a tree, or in the knowledge
printed with it.

Why: The paper shows an empty box instead, and nobody can tell what it was.

Wrong:

    lamp:
      check: Does the light 💡 come on?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Right:

    lamp:
      check: Does the light come on?
      results:
        - {result: yes, branch: all-good}
        - {result: no, branch: repair}

Fix: Write it as a word.
"""

import re
from collections.abc import Iterable, Iterator
from datetime import date

from builder.chart.fonts import medium
from builder.model.finding import Finding, Severity
from builder.model.library import Library
from builder.model.text import Text
from builder.rules.shared.published_text import position_in, texts_of_knowledge
from builder.rules.shared.rule import Facts, Family, Rule

# What comes along from a web page; `<place>` without an end is a value of the walk.
HTML = re.compile(r"</[a-z][a-z0-9]*>|<br ?/?>|&(?:nbsp|amp|lt|gt|quot|#\d+);", re.I)
TAGS = re.compile(r"</?[a-z][a-z0-9]* ?/?>|&[a-z#0-9]+;", re.I)  # all of it, once it's clear
RULE = Rule(
    name="unprintable-sign",
    family=Family.WORDS,
    severity=Severity.WARNING,
    summary="A character or HTML that the charts and prints can't show.",
)


def check(facts: Facts) -> Iterator[Finding]:
    """Yield a finding for every text of a tree with a character that the font lacks."""
    yield from _unprintable((*facts.texts, *facts.tree.symptom.words))  # the wall chart quotes them


def check_library(library: Library, _today: date) -> Iterator[Finding]:
    """Yield a finding for every text of the knowledge with such a character."""
    names = (library.tools, library.lamps, library.systems, library.modules)
    yield from _unprintable(texts_of_knowledge(library))
    yield from _unprintable(entry.name for kind in names for entry in kind.values())


def _without(text: str) -> str:
    """Return a text without its HTML; what only stood for a space is one."""
    return " ".join(TAGS.sub(lambda tag: " " if tag[0].startswith("&") else "", text).split())


def _unprintable(texts: Iterable[Text]) -> Iterator[Finding]:
    known = medium().advances
    for text in texts:
        if match := HTML.search(text):
            signs = ", ".join(f"`{sign}`" for sign in dict.fromkeys(TAGS.findall(text)))
            yield RULE.finding(position_in(text, match.start(), len(match[0])),
                               f"{signs}: HTML is printed as it stands",
                               "techs and customers read the signs in the middle of the words",
                               f"write `{_without(text)}`: the pages set the type themselves",
                               )  # fmt: skip
        if not text.isascii():
            for index, character in enumerate(text):
                if character not in known and not character.isspace():
                    yield RULE.finding(
                        position_in(text, index, 1),
                        f"character `{character}` (U+{ord(character):04X}) can't be printed",
                        "the paper shows an empty box instead",
                        "write it as a word",
                    )
                    break
