"""The warning lamps: plain drawings of our own, each with its name beside it.

In: the catalogue. Out: `Page`s; `drawing` for whoever shows a lamp.
"""

from collections.abc import Iterator
from functools import cache
from pathlib import Path

from markupsafe import Markup

from builder.model.knowledge import Lamp
from builder.model.library import Library
from builder.model.text import Text
from builder.pages import addresses
from builder.pages.catalogue import Catalogue
from builder.pages.page import Page
from builder.pages.render import render
from builder.wording import phrases

_DRAWINGS = Path(__file__).parent / "drawings"
COLOURS = ("red", "yellow", "green", "blue")


def lamp_pages(catalogue: Catalogue) -> Iterator[Page]:
    """Yield the list of lamps and the page of each."""
    lamps = [lamp_of(catalogue.library, id_) for id_ in _ids(catalogue)]
    body = render("lamps.html", "lamps/index", lamps=lamps, drawing=drawing, by=catalogue.by_lamp)
    yield Page("lamps/index", "Lamps", body)
    for lamp in lamps:
        path = addresses.lamp(lamp.id)
        trees = catalogue.by_lamp.get(lamp.id, ())
        body = render("lamp.html", path, lamp=lamp, drawing=drawing, trees=trees)
        yield Page(path, str(lamp.name), body, summary=f"Decision trees: {lamp.name} on")


def _ids(catalogue: Catalogue) -> list[str]:
    """Return all lamps in the order of the file, then those that only trees name."""
    return list(dict.fromkeys([*catalogue.library.lamps, *catalogue.by_lamp]))


def lamp_of(library: Library, id_: str) -> Lamp:
    """Return a lamp's record, or a bare one where the shop has none."""
    return library.lamps.get(id_) or Lamp(Text(id_), Text(f"{phrases.sentence(id_)} lamp"))


def drawing(lamp: Lamp) -> Markup:
    """Return a lamp drawn lit in its colour; its name stands beside it wherever it is shown."""
    colour = next((one for one in COLOURS if one in str(lamp.colour or "")), "white")
    strokes = _strokes(addresses.slug(lamp.id).lower())
    return Markup(
        '<svg class="lamp lamp-{}" viewBox="0 0 48 48" aria-hidden="true" focusable="false">'
        '<rect width="48" height="48" rx="8"/><g>{}</g></svg>'
    ).format(colour, strokes)


@cache
def _strokes(name: str) -> Markup:
    file = _DRAWINGS / f"{name}.svg"
    return Markup((file if file.is_file() else _DRAWINGS / "plain.svg").read_text("utf-8").strip())
