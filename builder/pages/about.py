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
    "DANGER": "Death or grave injury will follow if it is not avoided.",
    "WARNING": "Death or grave injury can follow if it is not avoided.",
    "CAUTION": "Slight or middling injury can follow if it is not avoided.",
    "NOTICE": "Things can be damaged; no person is in danger.",
}
FURTHER_PAGES = (  # address, name, what is there
    ("during/index", "When it shows", "Trees by what the vehicle or the driver was doing"),
    ("vehicles/index", "Vehicles", "The vehicles this shop sees, and what is written about each"),
    ("tools", "Tools", "What each tool reads, and where it is kept"),
    ("calculators", "Calculators", "Bus resistance, voltage drop, battery, units, DTCs, VIN"),
    ("glossary", "Glossary", "One word for one thing; four words that people mix up"),
    ("upkeep", "Upkeep", "Reviews, drafts, codes without a tree, closed jobs"),
    ("rules/index", "Rules of the check", "What a tree must be before it is published"),
    ("about", "About and cautions", "What this site is, and every caution on it"),
)


def about_pages(library: Library) -> Iterator[Page]:
    """Yield the page about the site and the list of further pages."""
    hazards = by_severity(sorted(library.hazards.values(), key=lambda hazard: hazard.hazard))
    body = render(
        "about.html", "about", shop=library.shop, hazards=hazards, meanings=SIGNAL_MEANINGS
    )
    yield Page("about", "About and cautions", body)
    yield Page("more", "More", render("more.html", "more", pages=FURTHER_PAGES))
