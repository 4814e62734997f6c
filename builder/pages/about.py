"""What this site is, what it isn't, and every caution on it.

In: the library. Out: two `Page`s: `about`, and `more`, which lists the pages that the header has no
room for.
"""

from collections.abc import Iterator

from builder.model.library import Library
from builder.pages.page import Page
from builder.pages.render import render
from builder.wording.hazards import by_severity

SIGNAL_MEANINGS = {
    "DANGER": "If you don't avoid it, it will kill or seriously injure someone.",
    "WARNING": "If you don't avoid it, it could kill or seriously injure someone.",
    "CAUTION": "If you don't avoid it, it could cause minor or moderate injury.",
    "NOTICE": "It could damage property. Nobody gets hurt.",
}
FURTHER_PAGES = (  # address, name, what is there
    ("modules/index", "Module setup", "What each module needs when it is replaced"),
    ("during/index", "When it happens", "Trees by what the vehicle or the driver was doing"),
    ("vehicles/index", "Vehicles", "The vehicles our shop sees, each with its trees"),
    ("procedures/index", "Procedures", "Tests that many trees share, each with its chart"),
    ("tools", "Tools", "What each tool measures, and where it's kept"),
    ("calculators", "Calculators", "Bus resistance, voltage drop, battery, units, DTCs, VIN"),
    ("glossary", "Glossary", "One word for one thing, and four words people mix up"),
    ("words", "Words of the format", "What you can write in a tree, with examples"),
    ("upkeep", "Review status", "Reviews, drafts, DTCs without a tree, closed jobs"),
    ("rules/index", "Checks", "What every tree must pass before it's published"),
    ("about", "About and safety", "What this site is, and every caution on it"),
)


def about_pages(library: Library) -> Iterator[Page]:
    """Yield the page about the site and the list of further pages."""
    hazards = by_severity(sorted(library.hazards.values(), key=lambda hazard: hazard.hazard))
    body = render(
        "about.html", "about", shop=library.shop, hazards=hazards, meanings=SIGNAL_MEANINGS
    )
    yield Page("about", "About and safety", body)
    yield Page("more", "More", render("more.html", "more", pages=FURTHER_PAGES))
