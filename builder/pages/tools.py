"""The tools of the shop: what each measures, where it's kept, what it's used for.

In: the catalog of trees. Out: one `Page`, with an anchor `tool-<id>` for each tool.
"""

from builder.model.knowledge import InstrumentRange
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.value_text import grouped_number, number_text, unit_label


def tools_page(catalog: TreeCatalog) -> Page:
    """Write the page of all tools."""
    articles = catalog.library.how_tos.values()
    articles_by_tool = {
        id_: [article for article in articles if id_ in article.tools]
        for id_ in catalog.library.tools
    }
    body = render(
        "tools.html",
        "tools",
        tools=catalog.library.tools,
        trees=catalog.by_tool,
        articles=articles_by_tool,
        range_cells=range_cells,
    )
    return Page("tools", "Tools", body)


def range_cells(span: InstrumentRange) -> tuple[str, str, str]:
    """Return the range, resolution and accuracy of an instrument in one unit."""
    unit = unit_label(span.unit)
    limits = f"{grouped_number(span.low)} to {grouped_number(span.high)} {unit}"
    step = span.resolution
    resolution = f"{number_text(step)} {unit}" if step is not None else "unknown"
    accuracy = f"{span.error} {unit}" if span.error else "unknown"
    return limits + (f", then {span.over}" if span.over else ""), resolution, accuracy
