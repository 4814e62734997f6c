"""The warning lights: plain drawings of our own, each with its name next to it.

In: the catalog of trees. Out: `Page`s; `lamp_drawing` for other pages that show a warning light.
"""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from markupsafe import Markup

from builder.model.knowledge import Lamp
from builder.model.library import Library
from builder.model.text import Text
from builder.pages import addresses
from builder.pages.page import Page
from builder.pages.render import render
from builder.pages.tree_catalog import TreeCatalog
from builder.wording.sentences import capitalized

_DRAWINGS = Path(__file__).parent / "drawings"
LAMP_COLORS = ("red", "yellow", "green", "blue")


def lamp_pages(catalog: TreeCatalog) -> Iterator[Page]:
    """Yield the list of warning lights and the page of each."""
    lamps = [lamp_record(catalog.library, id_) for id_ in _ids(catalog)]
    body = render(
        "lamps.html", "lamps/index", lamps=lamps, lamp_drawing=lamp_drawing, trees=catalog.by_lamp
    )
    yield Page("lamps/index", "Warning lights", body)
    for lamp in lamps:
        path = addresses.lamp_path(lamp.id)
        trees = catalog.by_lamp.get(lamp.id, ())
        body = render("lamp.html", path, lamp=lamp, lamp_drawing=lamp_drawing, trees=trees)
        yield Page(path, str(lamp.name), body, summary=f"Decision trees: {lamp.name} on")


def _ids(catalog: TreeCatalog) -> list[str]:
    """Return the warning lights in the order of `kb/lamps.yml`, then those that only trees name."""
    return list(dict.fromkeys([*catalog.library.lamps, *catalog.by_lamp]))


def lamp_record(library: Library, id_: str) -> Lamp:
    """Return the record of a warning light, or an empty one where the shop has none."""
    return library.lamps.get(id_) or Lamp(Text(id_), Text(f"{capitalized(id_)} light"))


def lamp_drawing(lamp: Lamp) -> Markup:
    """Draw a warning light in its color; every page shows its name next to it."""
    color = next((name for name in LAMP_COLORS if name in str(lamp.color or "")), "white")
    strokes = _strokes(addresses.file_slug(lamp.id).lower())
    return Markup(
        '<svg class="lamp lamp-{}" viewBox="0 0 48 48" aria-hidden="true" focusable="false">'
        '<rect width="48" height="48" rx="8"/><g>{}</g></svg>'
    ).format(color, strokes)


@cache
def _strokes(name: str) -> Markup:
    file = _DRAWINGS / f"{name}.svg"
    return Markup((file if file.is_file() else _DRAWINGS / "plain.svg").read_text("utf-8").strip())
