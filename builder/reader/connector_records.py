"""Connectors of a vehicle from their maps.

In: maps that have passed their schema. Out: connectors, and a finding for every face that can't be
drawn.
"""

from collections.abc import Iterator

from builder.model.finding import Finding
from builder.model.text import Text
from builder.model.vehicle_data import Connector, Pin
from builder.reader.nodes import Map, Seq
from builder.reader.source import mistake
from builder.reader.values import items, map_, maps_by_name, number, text, the_text

MOST = 200  # pins of a face; no drawing of more can be read
WHY = "the drawing of the connector would send the probe to a wrong pin"
Face = tuple[tuple[str, ...], ...]


def connector(id_: Text, node: Map, findings: list[Finding]) -> Connector:
    """Read one connector; a face with a mistake counts as not known."""
    return Connector(
        id=id_,
        of=the_text(node, "of"),
        where=text(node, "where"),
        face=_face(node, findings),
        tab=text(node, "tab"),
        seen_from=text(node, "seen_from"),
        pins={str(name): _pin(name, pin) for name, pin in maps_by_name(map_(node, "pins"))},
    )


def _pin(number_: Text, node: Map) -> Pin:
    return Pin(
        number=number_,
        role=the_text(node, "role"),
        circuit=text(node, "circuit"),
        wire=text(node, "wire"),
        to=text(node, "to"),
        fuse=text(node, "fuse"),
    )


def _face(node: Map, findings: list[Finding]) -> Face:
    """Return the pin numbers of each row, as written or counted along the rows."""
    made = tuple(_mistakes(node))
    findings += made
    if made:
        return ()
    rows, columns = (int(number(node, name) or 0) for name in ("rows", "columns"))
    if rows:
        return tuple(
            tuple(str(row * columns + column + 1) for column in range(columns))
            for row in range(rows)
        )
    return tuple(tuple(map(str, row)) for row in _written_rows(node))


def _written_rows(node: Map) -> Iterator[list[Text]]:
    for row in items(node, "cavities"):
        if isinstance(row, Seq):
            yield [pin for pin in row if isinstance(pin, Text)]


def _mistakes(node: Map) -> Iterator[Finding]:
    rows, columns = text(node, "rows"), text(node, "columns")
    written = [pin for row in _written_rows(node) for pin in row]
    if written and (rows or columns):
        yield mistake("bad-value", node.key("cavities").at,
                      "`cavities` and `rows` both say how the pins lie", WHY,
                      "leave out `rows` and `columns`")  # fmt: skip
    elif bool(rows) != bool(columns):
        there, missing = ("rows", "columns") if rows else ("columns", "rows")
        yield mistake("bad-value", node.key(there).at, f"`{there}` needs `{missing}`", WHY,
                      f"add `{missing}`, or list the pins of each row under `cavities`",
                      )  # fmt: skip
    elif max(len(written), int(rows or 0) * int(columns or 0)) > MOST:
        yield mistake("bad-value", node.key("rows" if rows else "cavities").at,
                      f"a face with more than {MOST} pins can't be drawn", WHY,
                      "write each block of the connector as a connector of its own")  # fmt: skip
    for at, pin in enumerate(written):
        if pin in written[:at]:
            yield mistake("bad-value", pin.at, f"pin {pin} is drawn twice", WHY,
                          "write every pin number once")  # fmt: skip
