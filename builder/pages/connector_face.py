"""The face of a connector, drawn: rows of cavities with their numbers, pin 1, the locking tab.

In: a connector, the pins to mark. Out: SVG, all text of authors escaped; and its caption.
The script `web/connector-face.js` draws the same face in a walk; a test holds them equal.
"""

from collections.abc import Collection, Iterator

from markupsafe import Markup

from builder.model.vehicle_data import Connector
from builder.wording.sentences import capitalized

CELL, EDGE, TAB = 40, 16, 12  # units of the drawing: a cavity, the shell around them, its tab
TAB_LENGTH = 48
_RECT = Markup('<rect class="{}" x="{:g}" y="{:g}" width="{:g}" height="{:g}" rx="{:g}"/>')
_PIN = Markup('<g class="face-pin{}">{}<text x="{:g}" y="{:g}">{}</text></g>')
_ROUND = Markup('<circle cx="{:g}" cy="{:g}" r="18"/>')
_SQUARE = Markup('<rect x="{:g}" y="{:g}" width="34" height="34" rx="3"/>')
_CORNER = Markup('<path class="face-first" d="M{:g} {:g}h13l-13 13z"/>')
_SVG = Markup('<svg class="face" viewBox="0 0 {w} {h}" width="{w}" role="img" aria-label="{}">'
              "{}</svg>")  # fmt: skip


def face_caption(connector: Connector) -> str:
    """Say how the face is seen; the numbers on the connector itself count."""
    seen = f"Seen from the {connector.seen_from}" if connector.seen_from else ""
    tab = f"tab at the {connector.tab}" if connector.tab in ("top", "bottom") else ""
    side = f"tab on the {connector.tab}" if connector.tab and not tab else ""
    said = capitalized(", ".join(filter(None, (seen, tab, side))))
    return f"{said}. Go by the numbers on the connector.".removeprefix(". ")


def face_drawing(connector: Connector, marked: Collection[str]) -> Markup:
    """Draw the face of a connector; a marked pin is round and dark, pin 1 has a marked corner."""
    rows = connector.face
    if not rows:
        return Markup("")
    most = max(map(len, rows))
    wide, high = (CELL * count + 2 * EDGE for count in (most, len(rows)))
    shell = _RECT.format("face-shell", 8, 8, wide - EDGE, high - EDGE, 8)
    pins = Markup("").join(_cavities(connector, marked, most))
    count = sum(map(len, rows))
    label = f"Face with {count} cavities; marked: {', '.join(marked) or 'none'}"
    return _SVG.format(label, _tab(str(connector.tab or ""), wide, high) + shell + pins,
                       w=wide, h=high)  # fmt: skip


def _tab(side: str, wide: int, high: int) -> Markup:
    middle = ((wide - TAB_LENGTH) / 2, (high - TAB_LENGTH) / 2)
    places = {
        "top": (middle[0], 0, TAB_LENGTH, TAB),
        "bottom": (middle[0], high - TAB, TAB_LENGTH, TAB),
        "left": (0, middle[1], TAB, TAB_LENGTH),
        "right": (wide - TAB, middle[1], TAB, TAB_LENGTH),
    }
    return _RECT.format("face-tab", *places[side], 3) if side in places else Markup("")


def _cavities(connector: Connector, marked: Collection[str], most: int) -> Iterator[Markup]:
    """Yield every cavity; rows with fewer of them stand in the middle."""
    for row, numbers in enumerate(connector.face):
        left = EDGE + CELL * (most - len(numbers)) / 2
        for place, number in enumerate(numbers):
            x, y = left + CELL * place, EDGE + CELL * row
            pin = connector.pins.get(number)
            is_free = pin is None or pin.role == "not used"
            look = " on" if number in marked else " free" if is_free else ""
            shape = _ROUND.format(x + 20, y + 20) if number in marked else _SQUARE.format(
                x + 3, y + 3)  # fmt: skip
            corner = _CORNER.format(x + 3, y + 3) if number == "1" else Markup("")
            yield _PIN.format(look, shape + corner, x + 20, y + 28, number)
