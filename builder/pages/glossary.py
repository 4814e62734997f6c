"""The terms of the shop, each with one meaning.

In: the library. Out: one `Page`, with an anchor `term-<id>` for each term. The four terms that
people mix up most come first.
"""

from builder.model.knowledge import Term
from builder.model.library import Library
from builder.pages.page import Page
from builder.pages.render import render

MIXED_UP = ("programming", "configuration", "initialization", "security-learning")


def glossary_page(library: Library) -> Page:
    """Write the glossary."""
    terms = sorted(library.glossary.values(), key=lambda term: term.term.casefold())
    body = render(
        "glossary.html",
        "glossary",
        four=[library.glossary[id_] for id_ in MIXED_UP if id_ in library.glossary],
        terms=terms,
        ids=_ids(terms),
        slang=sorted(library.words.values(), key=lambda word: word.slang.casefold()),
    )
    return Page("glossary", "Glossary", body)


def _ids(terms: list[Term]) -> dict[str, str]:
    """Return the ID of each term by its name in lower case."""
    return {str(term.term).casefold(): str(term.id) for term in terms}
