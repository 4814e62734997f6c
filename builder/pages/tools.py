"""The tools of the shop: what each reads, where it is kept, what it is used for.

In: the catalogue. Out: one `Page`, with an anchor `tool-<id>` for each tool.
"""

from builder.model.knowledge import InstrumentRange
from builder.pages.catalogue import Catalogue
from builder.pages.page import Page
from builder.pages.render import render
from builder.wording import phrases


def tools_page(catalogue: Catalogue) -> Page:
    """Write the page of all tools."""
    articles = catalogue.library.how_tos.values()
    used = {
        id_: [article for article in articles if id_ in article.tools]
        for id_ in catalogue.library.tools
    }
    body = render(
        "tools.html",
        "tools",
        tools=catalogue.library.tools,
        by=catalogue.by_tool,
        articles=used,
        reads=reads,
    )
    return Page("tools", "Tools", body)


def reads(of: InstrumentRange) -> tuple[str, str, str]:
    """Say what an instrument can show in one unit: range, steps, largest error."""
    sign = phrases.sign(of.unit)
    span = f"{phrases.grouped(of.low)} to {phrases.grouped(of.high)} {sign}"
    steps = f"{phrases.number(of.resolution)} {sign}" if of.resolution is not None else "not known"
    error = f"{of.error} {sign}" if of.error else "not known"
    return span + (f", then {of.over}" if of.over else ""), steps, error
